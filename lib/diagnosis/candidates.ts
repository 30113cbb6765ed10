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

/**
 * The instrument that an expert takes: one that survives what may be there and shows it, and of these the surest.
 *
 * @param greatest  SI, of the first quantity: what has to be reckoned with.
 * @param usual  SI, of the first quantity.
 */
export function instrumentFor(
  { instruments, quantities: [quantity] }: Candidate,
  greatest: number,
  usual: number,
): Gauge {
  const [first] = instruments;
  if (!first || !quantity) throw new RangeError('A candidate has an instrument and a quantity');
  const rank = (instrument: Gauge) => rankOf(gaugeFor(instrument, quantity), greatest, usual);
  return instruments.reduce((best, other) => (rank(other) < rank(best) ? other : best), first);
}

/** Orders of magnitude above any uncertainty in SI. */
const SHOWS_NOT_ALL = 1e20;
const IS_LOST = 1e30;

function rankOf(gauge: Gauge, greatest: number, usual: number): number {
  const most = toSi(gauge.range.max, gauge.unit);
  const survives = gauge.overRange.kind === 'stops' || greatest <= most * gauge.overRange.ratio;
  const shows = greatest <= most;
  return (survives ? 0 : IS_LOST) + (shows ? 0 : SHOWS_NOT_ALL) + standardUncertainty(gauge, fromSi(usual, gauge.unit));
}
