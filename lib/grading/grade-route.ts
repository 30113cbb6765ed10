import type { Catalogue } from '../catalogue';
import type { CallGrade } from './grade-call';
import type { JudgedStep } from './judge-steps';
import type { Mark } from './mark';
import type { NoteCode } from './note-codes';
import type { Rubric } from './rubric';

/**
 * Minutes well spent over minutes spent, wrong repairs among these. A reading's minutes are well spent as far as it told what
 * could be told at that moment; as many as the expert needed are never held against anyone. A fast route to the wrong area
 * earns nothing, and neither does a call without a reading.
 */
export function gradeRoute(
  steps: readonly JudgedStep[],
  { causes }: Pick<Catalogue, 'causes'>,
  expertMinutes: number,
  { onTheWay, wrongRepairs }: CallGrade,
  { fullFrom }: Rubric['route'],
): Mark[] {
  const minutes = minutesOf(steps);
  const repairMinutes = sum(wrongRepairs, (id) => minutesOfRepair(id, causes));
  const spent = minutes + repairMinutes;
  const wellSpent = sum(steps, ({ grade }) => grade.minutes * grade.credit);
  const values = { minutes, repairMinutes, expertMinutes, wellSpent: Math.round(wellSpent) };
  const whole = (code: NoteCode, share: number): Mark => ({ code, values, share, most: 1 });
  if (steps.length === 0) return [whole('no-readings', 0)];
  const notes = steps.flatMap(noteOn);
  if (!onTheWay) return [whole('led-astray', 0), ...notes];
  const share = Math.min(1, Math.max(wellSpent, Math.min(expertMinutes, spent)) / spent / fullFrom);
  return [whole(share === 1 ? 'route-whole' : 'route-partly', share), ...notes];
}

/** Shop time of the readings. */
export function minutesOf(steps: readonly JudgedStep[]): number {
  return sum(steps, ({ grade }) => grade.minutes);
}

/** Why a reading's minutes do not count in full, and what would have told more. */
function noteOn({ grade: { seq, minutes, credit, best }, code }: JudgedStep): Mark[] {
  if (credit === 1) return [];
  const values = { seq, minutes, percent: Math.round(100 * credit) };
  const better = code === 'step-less-telling' && best ? { check: best.check, condition: best.condition } : {};
  return [{ code, values: { ...values, ...better }, share: 0 }];
}

function minutesOfRepair(id: string, causes: Catalogue['causes']): number {
  const repairs = [...causes.values()].flatMap((cause) => cause.repairs);
  return repairs.find((repair) => repair.id === id)?.minutes ?? 0;
}

function sum<T>(items: readonly T[], of: (item: T) => number): number {
  return items.reduce((total, item) => total + of(item), 0);
}
