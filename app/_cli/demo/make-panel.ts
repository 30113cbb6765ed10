import { database } from '@/app/_server/database';
import { possibleJudges } from '@/app/_server/panels/possible-judges';
import { fillPool } from '@/app/_server/pool/fill';
import { poolVersions } from '@/app/_server/pool/make-task';
import { randomId } from '@/app/_server/random-id';
import { listSchemes } from '@/app/_server/schemes';
import { addingPanel } from '@/db/queries/panels';
import { listPool } from '@/db/queries/pool-tasks';
import { addingSchemeVersion } from '@/db/queries/schemes';
import { addingUser } from '@/db/queries/users';
import { panelRatings } from '@/db/schema';
import { together } from '@/db/together';
import { expectedScore } from '@/lib/competency/task-model';
import { type RandomStream, randomStream } from '@/lib/random';
import type { PanelTask } from '@/lib/readiness/panel';
import { panelResult } from '@/lib/readiness/panel-result';
import { panelTasks } from '@/lib/readiness/panel-tasks';

const DAY = 86_400_000;
/** Judges of the panel, those that the school lacks invented for it, and tasks. */
const JUDGES = 5;
const TASKS = 12;
/** Enough to draw the tasks of a panel from. */
const POOL = { cases: 6, questions: 80 };
/** Around what the invented judges think of, logits; how far they are apart, and how much nearer they come. */
const LINE = { ability: 0.3, apart: 0.35, nearer: 0.5 };

/** A closed panel of invented judges whose line the first scheme has taken over, some weeks ago. */
export async function makePanel(organizationId: string, now: Date): Promise<void> {
  const db = database();
  const [createdAt, closedAt] = [new Date(now.getTime() - 40 * DAY), new Date(now.getTime() - 30 * DAY)];
  await fillPool('practice', POOL, createdAt);
  const [scheme] = await listSchemes(db, organizationId);
  if (!scheme) return;
  const judgeIds = await fiveJudges(organizationId, createdAt);
  const tasks = panelTasks(scheme, await listPool(db, 'practice', poolVersions()), TASKS);
  const ratings = judgeIds.flatMap((judgeId, index) => ratedBy(judgeId, index, tasks));
  const result = panelResult(tasks, ratings);
  if (!result || 'why' in result.cut) throw new Error('The invented judges of the demo come to no line');
  const [id, version] = [randomId(), scheme.version + 1];
  const about = { id, organizationId, schemeId: scheme.id, createdBy: judgeIds[0] ?? '', createdAt, closedAt };
  const setBy = { kind: 'panel', panelId: id, judges: result.judges, at: closedAt.getTime() } as const;
  const { claim, others } = addingPanel(
    db,
    { ...about, title: 'First line', tasks, state: 'closed', adoptedVersion: version, demo: true },
    judgeIds,
  );
  await together(db, [
    claim,
    ...others,
    ...ratings.map((one) => db.insert(panelRatings).values({ panelId: id, ...one, ratedAt: closedAt })),
    addingSchemeVersion(db, {
      ...{ id: randomId(), organizationId, schemeId: scheme.id, version },
      body: { ...scheme, version, cut: { ...result.cut, setBy } },
      ...{ changedBy: about.createdBy, changedAt: closedAt },
      note: 'Invented: the line that a panel of five judges set took the place of the one that was assumed.',
    }),
  ]);
}

/** The staff, and as many invented people from outside as are lacking: they belong to no organisation and cannot sign in. */
async function fiveJudges(organizationId: string, at: Date): Promise<string[]> {
  const staff = (await possibleJudges(organizationId)).map(({ id }) => id);
  const lacking = Array.from({ length: Math.max(0, JUDGES - staff.length) }, (_, index) => ({
    ...{ id: randomId(), name: `Invented judge ${index + 1}`, email: `judge.${index + 1}@judges.example` },
    ...{ createdAt: at, updatedAt: at },
  }));
  await together(
    database(),
    lacking.map((person) => addingUser(database(), person)),
  );
  return [...staff, ...lacking.map(({ id }) => id)].slice(0, JUDGES);
}

/** What a judge said twice, each of somebody whom they think of, in the steps in which people say such things. */
function ratedBy(judgeId: string, index: number, tasks: readonly PanelTask[]) {
  const draw = randomStream(`judge ${index}`, 'demo panel');
  const off = draw.between(-LINE.apart, LINE.apart);
  return [1, 2].flatMap((round) =>
    tasks.map((task, place) => ({
      ...{ judgeId, round, task: place + 1 },
      expected: said(task, LINE.ability + off * (round === 1 ? 1 : LINE.nearer), draw),
    })),
  );
}

function said({ model, outOf }: PanelTask, ability: number, draw: RandomStream): number {
  const { points } = expectedScore(model, ability + draw.between(-0.3, 0.3));
  const step = outOf === 1 ? 0.05 : 0.25;
  return Math.min(outOf, Math.max(0, Number((Math.round(points / step) * step).toFixed(2))));
}
