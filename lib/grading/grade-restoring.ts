import type { Catalogue } from '../catalogue';
import type { CallAct, ReadingAct } from './acts';
import type { Mark } from './mark';
import type { Rubric } from './rubric';

/** Steps that the readings made leave to be put right, in the order of the list. */
export function restoringNeeded(
  readings: readonly Pick<ReadingAct, 'check'>[],
  { checks, restoring }: Pick<Catalogue, 'checks' | 'restoring'>,
): string[] {
  const left = new Set(readings.flatMap(({ check }) => checks.get(check)?.restore ?? []));
  return [...restoring.keys()].filter((step) => left.has(step));
}

/** What was left undone, and what was done that does harm. A call made before restoring was asked for loses nothing. */
export function gradeRestoring(
  readings: readonly ReadingAct[],
  { restored }: CallAct,
  catalogue: Catalogue,
  costs: Rubric['practice']['costs'],
): Mark[] {
  if (!restored) return [];
  const undone = restoringNeeded(readings, catalogue).filter((step) => !restored.includes(step));
  const harmful = restored.filter((step) => catalogue.restoring.get(step)?.wrong);
  const lapse = (code: 'left-undone' | 'wrong-restoring', step: string): Mark => ({
    code,
    values: { step },
    share: -costs[code],
  });
  return [
    ...undone.map((step) => lapse('left-undone', step)),
    ...harmful.map((step) => lapse('wrong-restoring', step)),
  ];
}
