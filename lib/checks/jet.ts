import { type ConditionId, isSteady } from '../rig/condition';
import type { RigState } from '../rig/rig-state';
import type { Pascal } from '../units';
import type { Check } from './check';

/** Fuel from an opened fitting pierces skin from about this pressure. @source Toolbox talks and HSE RR976; see reference page 8. */
export const PIERCES_SKIN: Pascal = 0.7e6;

/**
 * The jet from a fitting that is opened with pressure behind it; undefined where it only weeps.
 *
 *     v = √(2 Δp / ρ)
 *
 * @source Bernoulli's equation.
 */
export function jetFrom({ points }: RigState, { opens }: Check, condition: ConditionId) {
  if (!opens || !isSteady(condition)) return undefined;
  const { pressures, values } = points[condition];
  const pressure = (pressures[opens] ?? 0) - (values.ambientPressure ?? 0);
  if (pressure < PIERCES_SKIN) return undefined;
  return { kind: 'jet' as const, speed: Math.sqrt((2 * pressure) / (values.fuelDensity ?? 830)), pressure };
}
