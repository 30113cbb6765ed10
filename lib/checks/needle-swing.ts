import { type ConditionId, isSteady } from '../rig/condition';
import type { RigState } from '../rig/rig-state';
import type { Pascal } from '../units';
import type { Quantity } from './check';

/** Swing of the pressure per share of gas, relative to the absolute pressure. Assumed. */
const SWING_PER_GAS = 0.5;

/**
 * Half the swing of a needle on a line that carries bubbles: each that passes the pump is a gap in its delivery.
 *
 *     ± k φ p     φ share of gas, p absolute
 */
export function needleSwing({ points }: RigState, condition: ConditionId, { of }: Quantity): Pascal {
  if (!isSteady(condition) || !('node' in of) || of.kind === 'temperature') return 0;
  const { pressures, values } = points[condition];
  return SWING_PER_GAS * (values.freeGasFraction ?? 0) * (pressures[of.node] ?? 0);
}
