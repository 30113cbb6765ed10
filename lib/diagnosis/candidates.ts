import type { Case } from '../cases/case';
import { gaugeFor } from '../cases/perform-check';
import type { Catalogue } from '../catalogue';
import type { Check, Quantity } from '../checks/check';
import { findLimit } from '../checks/limit';
import { isLowRange } from '../checks/low-range';
import type { Gauge } from '../gauges/gauge';
import { standardUncertainty } from '../gauges/uncertainty';
import type { ConditionId } from '../rig/condition';
import type { Rig } from '../rig/rig';
import { conditionsReachable } from '../symptoms/complaint';
import { fromSi, toSi } from '../units';
import type { Belief } from './belief';

/** A check in a condition, with what of it can be foretold. */
export interface Candidate {
  check: Check;
  condition: ConditionId;
  /** Measured at rest and judged by the rig's limit sheet. */
  quantities: readonly Quantity[];
  /** Those that fit, the procedure's own first. */
  instruments: readonly Gauge[];
}

/**
 * Every check in every condition that its procedure calls for and the vehicle reaches, where the limit sheet judges what it
 * measures. Traces are left out: following one takes milliseconds, times every particle.
 */
export function candidatesOf(
  { rig, points }: Pick<Case, 'rig' | 'points'>,
  { checks, gauges }: Catalogue,
): Candidate[] {
  return [...checks.values()].flatMap((check) => {
    if (!check.ports[rig.id]) return [];
    const fitting = check.instruments.flatMap((id) => gauges.get(id) ?? []);
    return conditionsReachable(points, check.conditions).flatMap((condition) => {
      const quantities = foretold(rig, check, condition);
      // An expert hooks up nothing that the port could burst, however low its pressure is believed to be.
      const instruments = fitting.filter((gauge) => !isLowRange(gauge, check, condition, rig, checks));
      return quantities.length > 0 && instruments.length > 0 ? [{ check, condition, quantities, instruments }] : [];
    });
  });
}

function foretold(rig: Rig, check: Check, condition: ConditionId): Quantity[] {
  return check.quantities.filter(
    ({ id, measures, of }) => measures !== 'codes' && of.kind !== 'trace' && findLimit(rig, check.id, condition, id),
  );
}

/** What has to be reckoned with at a port, as a share of belief. */
const RECKONED = 1e-3;

/**
 * The instrument that an expert takes: one that survives what may be there and shows it, and of these the surest.
 *
 * @param expected  SI, of the first quantity, under each particle; what is not finite counts as nothing.
 */
export function instrumentFor(
  { instruments, quantities: [quantity] }: Candidate,
  expected: Float64Array,
  belief: Belief,
): Gauge {
  const [first, ...others] = instruments;
  if (!first || !quantity) throw new RangeError('A candidate has an instrument and a quantity');
  if (others.length === 0) return first;
  const usual = usualOf(expected, belief);
  const ranks = instruments.map((instrument) => rankOf(gaugeFor(instrument, quantity), usual, expected, belief));
  return instruments[ranks.indexOf(Math.min(...ranks))] ?? first;
}

function usualOf(expected: Float64Array, belief: Belief): number {
  let mean = 0;
  for (let at = 0; at < expected.length; at++) {
    const value = expected[at] as number;
    if (Number.isFinite(value)) mean += value * (belief[at] as number);
  }
  return mean;
}

/** Orders of magnitude above any uncertainty in SI. */
const SHOWS_NOT_ALL = 1e20;
const IS_LOST = 1e30;

function rankOf(gauge: Gauge, usual: number, expected: Float64Array, belief: Belief): number {
  const most = toSi(gauge.range.max, gauge.unit);
  const shows = beliefBeyond(most, expected, belief) <= RECKONED;
  const { overRange } = gauge;
  const survives =
    shows || overRange.kind === 'stops' || beliefBeyond(most * overRange.ratio, expected, belief) <= RECKONED;
  return (survives ? 0 : IS_LOST) + (shows ? 0 : SHOWS_NOT_ALL) + standardUncertainty(gauge, fromSi(usual, gauge.unit));
}

/** Many particles that are hardly believed may matter together. */
function beliefBeyond(most: number, expected: Float64Array, belief: Belief): number {
  let sum = 0;
  for (let at = 0; at < expected.length; at++) {
    const value = expected[at] as number;
    if (value > most && Number.isFinite(value)) sum += belief[at] as number;
  }
  return sum;
}
