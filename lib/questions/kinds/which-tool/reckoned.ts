import type { Catalogue } from '../../../catalogue';
import { canRun } from '../../../symptoms/complaint';
import { brokenOn, causesOn, severitiesOf } from '../../shared/broken-day';
import type { RigDay } from '../../shared/rig-day';
import { type Hook, valueAt } from './hook';

const known = new WeakMap<RigDay, Map<string, number>>();

/**
 * The highest value, SI, that has to be reckoned with: of the sound rig, or of one with any one thing wrong with it that
 * still gets into the condition.
 */
export function mostReckoned(
  day: RigDay,
  hook: Pick<Hook, 'at' | 'condition'>,
  catalogue: Pick<Catalogue, 'causes'>,
  severity: number,
): number {
  const ofDay = known.get(day) ?? new Map<string, number>();
  known.set(day, ofDay);
  const name = `${hook.at.check.id} ${hook.at.quantity.id} ${hook.condition} ${severity}`;
  const most = ofDay.get(name) ?? solve(day, hook, catalogue, severity);
  ofDay.set(name, most);
  return most;
}

function solve(
  day: RigDay,
  hook: Pick<Hook, 'at' | 'condition'>,
  catalogue: Pick<Catalogue, 'causes'>,
  severity: number,
): number {
  const broken = causesOn(day, catalogue).map((cause) =>
    brokenOn(day, { cause, severity: severitiesOf(cause, [severity])[0] ?? severity }),
  );
  const reached = broken.filter(({ points }) => canRun(points, hook.condition));
  return Math.max(...[day, ...reached].map((state) => valueAt(state, hook)));
}
