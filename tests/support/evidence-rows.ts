import type { Db } from '@/db/client';
import { evidence, safetyStates, topicStates } from '@/db/schema';
import { tallyOf } from '@/lib/competency/tally';
import { toBytes } from '@/lib/competency/tally-bytes';
import type { TaskModel } from '@/lib/competency/task-model';

const DAY = 86_400_000;
const model: TaskModel = { kind: 'choice', difficulty: 0, floor: 0, spread: 0 };
const versions = { content: 'for tests', generator: 1 };

export interface ShownTopic {
  topic: string;
  right: number;
  wrong: number;
  daysAgo?: number;
}

interface Whose {
  learnerId: string;
  organizationId: string;
}

/** Lets somebody have answered questions on topics, and have worked so many cases with so many unsafe acts each. */
export async function addShown(
  db: Db,
  whose: Whose,
  { topics, cases = [0, 0, 0, 0, 0] }: { topics: readonly ShownTopic[]; cases?: readonly number[] },
): Promise<void> {
  const now = Date.now();
  for (const { topic, right, wrong, daysAgo = 0 } of topics) {
    const at = now - daysAgo * DAY;
    const scores = [...Array(right).fill(1), ...Array(wrong).fill(0)] as number[];
    const rows = scores.map((score, index) => evidenceRow(whose, topic, { score, index, at }));
    if (rows.length > 0) await db.insert(evidence).values(rows);
    const { sum, count, weight } = tallyOf(
      scores.map((score) => ({ at, model, score, weight: 1 })),
      180,
    );
    await db.insert(topicStates).values({
      ...whose,
      topic,
      at: new Date(at),
      sum: Buffer.from(toBytes(sum)),
      count,
      weight,
      cases: 0,
      halfLifeDays: 180,
      rules: 1,
    });
  }
  const recent = cases.map((events, index) => ({ work: `attempt ${whose.learnerId} ${index}`, at: now, events }));
  await db.insert(safetyStates).values({ ...whose, recent });
}

function evidenceRow(whose: Whose, topic: string, { score, index, at }: { score: number; index: number; at: number }) {
  const work = `sitting ${whose.learnerId}-${topic} ${index}`;
  return {
    ...whose,
    id: work,
    topic,
    source: 'question' as const,
    work,
    revision: 1,
    counts: true,
    score,
    model,
    hints: 0,
    exposure: work,
    safetyEvents: 0,
    purpose: 'practice' as const,
    at: new Date(at),
    versions,
    detail: { findings: [], share: score, because: 'question' },
    writtenAt: new Date(at),
  };
}
