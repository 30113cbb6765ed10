import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'drizzle-orm';
import { rebuildStates } from '@/app/_server/evidence/read-states';
import { readEvidence } from '@/app/_server/readiness/read-evidence';
import { type Db, migrateDatabase, openDatabase } from '@/db/client';
import { listEvidence } from '@/db/queries/evidence';
import { evidence, organizations } from '@/db/schema';
import { together } from '@/db/together';
import { byTopic, responseOf, weighed } from '@/lib/competency/states';
import { emptyTally, withResponse } from '@/lib/competency/tally';
import { randomStream } from '@/lib/random';
import { topicsInOrder } from '@/lib/topics/topic';
import { catalogue } from '../support/bench-rig';
import { aRoleProfile } from '../support/competency-rows';
import type { Pair } from './competency';
import { spreadOf } from './spread';

const PEOPLE = 500;
const MANY = 1_000_000;
const HALF_LIFE = 180;
const START = Date.UTC(2025, 0, 1);
const ROUNDS = 12;
/** The plain way is tried on one person of so many, and taken so many times. */
const SAMPLED = 10;
const organizationId = 'yard';
const topics = topicsInOrder(catalogue).map(({ id }) => id);

export interface BoardFigures extends Pair {
  rows: number;
}

export interface EvidenceFigures {
  /** Milliseconds to read what 500 people have shown on 13 topics, with few and with many rows behind it. */
  boards: readonly BoardFigures[];
  /** Milliseconds to make the states of somebody with 5,000 responses anew, from the log and back to the tables. */
  rebuild: Pair;
}

/** Everything goes through a database in a file. */
export async function measureEvidence(): Promise<EvidenceFigures> {
  const folder = mkdtempSync(join(tmpdir(), 'faultwright-evidence-'));
  try {
    const db = openDatabase(join(folder, 'bench.db'));
    migrateDatabase(db, join(process.cwd(), 'db/migrations'));
    // What is measured is the work, not the disk.
    db.run(sql`pragma synchronous = off`);
    // A million rows with four indexes would otherwise be written to and fro for minutes.
    db.run(sql`pragma cache_size = -1000000`);
    await db
      .insert(organizations)
      .values({ id: organizationId, name: 'Yard', slug: 'yard', createdAt: new Date(START) });
    const rebuild = await measureRebuild(db);
    await db.delete(evidence);
    await fill(db, people(), 2);
    for (const learnerId of people()) await rebuildStates(db, { organizationId, learnerId });
    const few = await measureBoard(db, ROUNDS);
    for (let [round, rows] = [0, await countRows(db)]; rows < MANY; rows = await countRows(db))
      await double(db, round++, MANY - rows);
    // The same states, however long the history behind them: what a board costs is asked, not what it says.
    const many = await measureBoard(db, 2);
    return { boards: [few, many], rebuild };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function people(): string[] {
  return Array.from({ length: PEOPLE }, (_, index) => `person ${String(index).padStart(3, '0')}`);
}

async function measureBoard(db: Db, plainRounds: number): Promise<BoardFigures> {
  const profile = aRoleProfile({ topics: topics.map((topic) => ({ topic, cut: 0, confidence: 0.9 })) });
  const ours: number[] = [];
  for (let round = 0; round < ROUNDS; round++)
    ours.push(await time(async () => void (await readEvidence(db, { organizationId }, profile))));
  const plain: number[] = [];
  const some = people().filter((_, index) => index % SAMPLED === 0);
  for (let round = 0; round < plainRounds; round++) {
    const taken = await time(async () => {
      for (const learnerId of some) await fromRows(db, learnerId);
    });
    plain.push(SAMPLED * taken);
  }
  return { rows: await countRows(db), ours: spreadOf(ours), plain: spreadOf(plain) };
}

async function measureRebuild(db: Db): Promise<Pair> {
  const learnerId = 'somebody';
  await fill(db, [learnerId], Math.round(5000 / topics.length));
  const [ours, plain] = [[] as number[], [] as number[]];
  for (let round = 0; round < ROUNDS; round++) {
    ours.push(await time(() => rebuildStates(db, { organizationId, learnerId })));
    plain.push(await time(() => fromRows(db, learnerId)));
  }
  return { ours: spreadOf(ours), plain: spreadOf(plain) };
}

/** The plain way: reads every row, and adds one response after another. */
async function fromRows(db: Db, learnerId: string): Promise<void> {
  const logged = await listEvidence(db, { organizationId, learnerId });
  for (const responses of byTopic(weighed(logged)).values())
    responses.reduce((tally, one) => withResponse(tally, responseOf(one), HALF_LIFE), emptyTally);
}

/** Responses on every topic of people, seeded. */
async function fill(db: Db, learnerIds: readonly string[], each: number): Promise<void> {
  const random = randomStream('evidence rows', `${learnerIds.length} × ${each}`);
  const rows = learnerIds.flatMap((learnerId) =>
    topics.flatMap((topic) =>
      Array.from({ length: each }, (_, n) => {
        const work = `attempt ${learnerId} ${topic} ${n}`;
        const difficulty = Math.round(100 * random.between(-2, 2)) / 100;
        return {
          ...{ id: `${work} row`, learnerId, organizationId, topic, source: 'case' as const, work, revision: 1 },
          ...{ counts: true, score: Math.floor(random.between(0, 5)), hints: 0, exposure: work, safetyEvents: 0 },
          model: {
            kind: 'steps' as const,
            steps: [-1.5, -0.5, 0.5, 1.5].map((step) => difficulty + step),
            spread: 0.5,
          },
          ...{ purpose: 'practice' as const, at: new Date(START + Math.floor(random.between(0, 3e10))) },
          ...{ writtenAt: new Date(START), versions: { content: 'a', generator: 1 } },
          detail: { findings: [1], share: 0.5, because: 'measured' },
        };
      }),
    ),
  );
  await together(
    db,
    rows.map((row) => db.insert(evidence).values(row)),
  );
}

/** As many rows again, with works of their own. @param most  No more than so many. */
async function double(db: Db, round: number, most: number): Promise<void> {
  const letter = String.fromCharCode('a'.charCodeAt(0) + round);
  const columns = sql.raw(
    'learner_id, organization_id, topic, source, revision, counts, score, model, hints, exposure, safety_events, purpose, at, versions, detail, written_at',
  );
  db.run(
    sql`insert into evidence (id, work, ${columns}) select id || ${letter}, work || ${letter}, ${columns} from evidence limit ${most}`,
  );
}

async function countRows(db: Db): Promise<number> {
  return db.$count(evidence);
}

async function time(run: () => Promise<void>): Promise<number> {
  const started = performance.now();
  await run();
  return performance.now() - started;
}
