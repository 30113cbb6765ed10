import { rebuildStates } from '@/app/_server/evidence/read-states';
import type { Db } from '@/db/client';
import { evidence } from '@/db/schema';
import type { TaskModel } from '@/lib/competency/task-model';

const DAY = 86_400_000;
const question: TaskModel = { kind: 'choice', difficulty: 0, floor: 0, spread: 0 };
const aCase: TaskModel = { kind: 'steps', steps: [-1, 0, 1, 2], spread: 0.5 };

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

/** Puts into the log that somebody answered questions on topics, and worked cases on fuel with so many unsafe acts each. */
export async function addShown(
  db: Db,
  whose: Whose,
  { topics, cases = [0, 0, 0, 0, 0] }: { topics: readonly ShownTopic[]; cases?: readonly number[] },
): Promise<void> {
  const answers = topics.flatMap(({ topic, right, wrong, daysAgo = 0 }) =>
    [...Array(right).fill(1), ...Array(wrong).fill(0)].map((score: number, index) =>
      logged(whose, { work: `sitting ${whose.learnerId}-${topic} ${index + 1}`, topic, score, daysAgo }),
    ),
  );
  const worked = cases.map((safetyEvents, index) => ({
    ...logged(whose, { work: `attempt ${whose.learnerId}-${index}`, topic: 'fuel-quality', score: 3, daysAgo: 0 }),
    source: 'case' as const,
    model: aCase,
    safetyEvents,
  }));
  for (const row of [...answers, ...worked]) await db.insert(evidence).values(row);
  await rebuildStates(db, whose);
}

function logged(
  whose: Whose,
  { work, topic, score, daysAgo }: { work: string; topic: string; score: number; daysAgo: number },
): typeof evidence.$inferInsert {
  const at = new Date(Date.now() - daysAgo * DAY);
  return {
    ...whose,
    id: `${work} ${topic}`,
    topic,
    source: 'question',
    work,
    revision: 1,
    counts: true,
    score,
    model: question,
    hints: 0,
    exposure: work,
    safetyEvents: 0,
    purpose: 'practice',
    at,
    versions: { content: 'for tests', generator: 1 },
    detail: { findings: [], share: score, because: 'question' },
    writtenAt: at,
  };
}
