import { gaugeFor } from '../cases/perform-check';
import type { Check, Quantity } from '../checks/check';
import { compareMeasured, type Measured, measured } from '../checks/expected';
import { type Bounds, findLimit, limitBounds } from '../checks/limit';
import type { Shown } from '../checks/shown';
import { type Comparison, compare } from '../checks/verdict';
import type { Gauge } from '../gauges/gauge';
import type { LimitLine } from '../rig/rig';
import { toSi } from '../units';
import type { FindingAct, ReadingAct } from './acts';
import type { Marking, Numbered } from './marking';

/** A finding with the reading it judges and everything looked up. */
export interface JudgedFinding {
  act: Numbered<FindingAct>;
  reading: Numbered<ReadingAct>;
  check: Check;
  quantity: Quantity;
  gauge: Gauge;
  shown: Shown;
  seen: Measured;
  /** What the learner read off a scale, SI. */
  entered: number | undefined;
  limit: LimitLine | undefined;
  /** How the reading stands to the limit; first what the instrument says, then what the learner read off it. */
  comparisons: readonly [Comparison, ...Comparison[]];
}

/** Looks up what a finding judges; undefined where it judges nothing that was measured. */
export function judgedFinding(
  { theCase, catalogue }: Pick<Marking, 'theCase' | 'catalogue'>,
  act: Numbered<FindingAct>,
  reading: Numbered<ReadingAct> | undefined,
): JudgedFinding | undefined {
  const check = reading && catalogue.checks.get(reading.check);
  const instrument = reading && catalogue.gauges.get(reading.instrument);
  const quantity = check?.quantities.find(({ id }) => id === act.quantity);
  const shown = reading?.shown.find((item) => item.quantity === act.quantity);
  if (!reading || !check || !instrument || !quantity || !shown) return undefined;
  const gauge = gaugeFor(instrument, quantity);
  const seen = measured(shown, gauge);
  if (!seen) return undefined;
  const entered = act.entered && shown.kind === 'value' ? toSi(act.entered.value, act.entered.unit) : undefined;
  const limit = findLimit(theCase.rig, reading.check, reading.condition, quantity.id);
  const comparisons = comparisonsHeld(seen, entered, limit && limitBounds(limit));
  return { act, reading, check, quantity, gauge, shown, seen, entered, limit, comparisons };
}

/** Comparisons that either the true needle or the learner's own reading of it supports. */
function comparisonsHeld(
  seen: Measured,
  entered: number | undefined,
  bounds: Bounds | undefined,
): JudgedFinding['comparisons'] {
  if (!bounds) return ['too-close'];
  const own = entered === undefined ? [] : [compare(entered, bounds, seen.uncertainty)];
  return [compareMeasured(seen, bounds), ...own];
}
