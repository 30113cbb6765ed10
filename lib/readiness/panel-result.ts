import { cutOnScale, rawCut } from '../competency/angoff';
import type { PanelTask } from './panel';

/** What a judge expects of somebody just good enough at one task, a round. */
export interface PanelRating {
  judgeId: string;
  round: number;
  /** Place among the panel's tasks, from 1. */
  task: number;
  /** Expected score, 0…outOf. */
  expected: number;
}

/** Judges whose ratings a cut needs at least: with one alone there is no standard error. */
export const FEWEST_JUDGES = 2;

/** What one judge said of every task in a round, in the order of the tasks; undefined while anything is open. */
export function ratingsOf(
  ratings: readonly PanelRating[],
  { judgeId, round, tasks }: { judgeId: string; round: number; tasks: number },
): number[] | undefined {
  const own = new Map(
    ratings
      .filter((one) => one.judgeId === judgeId && one.round === round)
      .map(({ task, expected }) => [task, expected]),
  );
  const row = Array.from({ length: tasks }, (_, place) => own.get(place + 1));
  return row.every((one) => one !== undefined) ? (row as number[]) : undefined;
}

/** Judges who rated every task in a round. */
export function finishedJudges(ratings: readonly PanelRating[], round: number, tasks: number): string[] {
  const judges = [...new Set(ratings.map(({ judgeId }) => judgeId))].sort();
  return judges.filter((judgeId) => ratingsOf(ratings, { judgeId, round, tasks }) !== undefined);
}

/** What was said of one task in a round, without saying by whom. */
export function spreadOf(
  ratings: readonly PanelRating[],
  { round, task }: { round: number; task: number },
): { least: number; mean: number; most: number; judges: number } | undefined {
  const said = ratings.filter((one) => one.round === round && one.task === task).map(({ expected }) => expected);
  if (said.length === 0) return undefined;
  const mean = said.reduce((sum, one) => sum + one, 0) / said.length;
  return { least: Math.min(...said), mean, most: Math.max(...said), judges: said.length };
}

export interface PanelResult {
  judges: number;
  /** Points of somebody just good enough, of so many. */
  points: number;
  outOf: number;
  /** Standard deviation of the judges' sums, points. */
  between: number;
  /** Of the points. */
  standardError: number;
  /** On the scale, with its standard error, logits; or why there is none. */
  cut: { ability: number; standardError: number } | { why: 'below-scale' | 'above-scale' };
}

/** What the second round of a panel comes to; undefined while fewer judges finished it than a cut needs. */
export function panelResult(tasks: readonly PanelTask[], ratings: readonly PanelRating[]): PanelResult | undefined {
  const finished = finishedJudges(ratings, 2, tasks.length);
  if (finished.length < FEWEST_JUDGES) return undefined;
  const rows = finished.map((judgeId) => ratingsOf(ratings, { judgeId, round: 2, tasks: tasks.length }) ?? []);
  const raw = rawCut(rows);
  const standardError = raw.standardError ?? 0;
  const found = cutOnScale(
    tasks.map(({ model }) => model),
    raw,
  );
  return {
    judges: finished.length,
    points: raw.points,
    outOf: tasks.reduce((sum, { outOf }) => sum + outOf, 0),
    between: standardError * Math.sqrt(finished.length),
    standardError,
    cut:
      found.theta === undefined
        ? { why: found.why }
        : { ability: found.theta, standardError: found.standardError ?? 0 },
  };
}
