import { posteriorAt, type Tally, tallyOf } from '@/lib/competency/tally';
import type { TaskModel } from '@/lib/competency/task-model';
import type { RoleProfile } from '@/lib/readiness/profile';
import type { Shown, TopicEvidence } from '@/lib/readiness/standing';

const DAY = 86_400_000;

export const NOW = Date.UTC(2026, 10, 27);

/** Two topics, one with a lower line, and a gate of two cases. */
export const aProfile: RoleProfile = {
  id: 'a-role',
  version: 3,
  topics: [
    { topic: 'filtration', cut: 0, confidence: 0.9 },
    { topic: 'fuel-quality', cut: -0.5, confidence: 0.9 },
  ],
  refuse: 0.1,
  minimum: 4,
  maximum: 12,
  safety: { clean: 3, atLeast: 2 },
  recentDays: 200,
  validMonths: 12,
  minutes: 60,
  handsOn: null,
  text: { en: { name: 'A role', about: 'For tests' } },
  source: { kind: 'assumed', because: 'for tests' },
};

const model: TaskModel = { kind: 'choice', difficulty: 0, floor: 0, spread: 0 };

/** So many right answers to tasks of middling difficulty, and so many wrong, all of one age. */
export function answered(right: number, wrong: number, daysAgo = 0): Tally {
  const at = NOW - daysAgo * DAY;
  const scores = [...Array(right).fill(1), ...Array(wrong).fill(0)] as number[];
  return tallyOf(
    scores.map((score) => ({ at, model, score, weight: 1 })),
    180,
  );
}

export function evidenceOf(tally: Tally, at = NOW, halfLifeDays: number | null = 180): TopicEvidence {
  const newestAt = tally.count === 0 ? null : tally.at;
  return { posterior: posteriorAt(tally, at, halfLifeDays), responses: tally.count, cases: 0, newestAt };
}

/** Evidence on some topics, with clean cases. */
export function shown(tallies: Readonly<Record<string, Tally>>, rest: Partial<Shown> = {}): Shown {
  const topics = new Map(Object.entries(tallies).map(([topic, tally]) => [topic, evidenceOf(tally, rest.at)]));
  return { profile: aProfile, topics, safety: [{ events: 0 }, { events: 0 }], at: NOW, ...rest };
}
