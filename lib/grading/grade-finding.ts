import type { Area } from '../areas';
import type { Case } from '../cases/case';
import { gaugeFor } from '../cases/perform-check';
import type { Catalogue } from '../catalogue';
import type { Check, Quantity } from '../checks/check';
import { compareMeasured, type Measured, measured } from '../checks/expected';
import { type Bounds, findLimit, limitBounds } from '../checks/limit';
import type { Shown } from '../checks/shown';
import { type Comparison, compare, verdictOf } from '../checks/verdict';
import { type Belief, updateBelief } from '../diagnosis/belief';
import { byArea, type Particle } from '../diagnosis/particles';
import type { Gauge } from '../gauges/gauge';
import { fromSi, toSi } from '../units';
import type { FindingAct, ReadingAct } from './acts';
import type { FindingGrade } from './grade';

/** A finding with the reading it judges and everything looked up. */
export interface JudgedFinding {
  seq: number;
  act: FindingAct;
  reading: ReadingAct;
  check: Check;
  quantity: Quantity;
  gauge: Gauge;
  shown: Shown;
  seen: Measured;
}

/** An area counts as cleared when its share falls below this part of what it was, or was hardly there. */
const CLEARED_BELOW = 0.7;
const HARDLY = 0.02;
/** An area counts as suspect when it still carries this share. */
const SUSPECT_FROM = 0.05;

/** Looks up what a finding judges; undefined where it judges nothing that was measured. */
export function judgedFinding(
  seq: number,
  act: FindingAct,
  reading: ReadingAct | undefined,
  { checks, gauges }: Catalogue,
): JudgedFinding | undefined {
  const check = reading && checks.get(reading.check);
  const instrument = reading && gauges.get(reading.instrument);
  const quantity = check?.quantities.find(({ id }) => id === act.quantity);
  const shown = reading?.shown.find((item) => item.quantity === act.quantity);
  if (!reading || !check || !instrument || !quantity || !shown) return undefined;
  const gauge = gaugeFor(instrument, quantity);
  const seen = measured(shown, gauge);
  return seen && { seq, act, reading, check, quantity, gauge, shown, seen };
}

/** Belief after a finding's reading. */
export function beliefAfter(finding: JudgedFinding, belief: Belief, particles: readonly Particle[]): Belief {
  return updateBelief(belief, particles, finding.quantity, finding.reading.condition, finding.seen);
}

/**
 * Grades one finding against what its instrument showed.
 *
 * The verdict and the comparison follow through: a dial misread but judged consistently keeps its marks, and the
 * misreading is reported apart.
 *
 * @param before, after  Belief on either side of the reading.
 */
export function gradeFinding(
  finding: JudgedFinding,
  { rig }: Case,
  particles: readonly Particle[],
  before: Belief,
  after: Belief,
): FindingGrade {
  const { act, reading, quantity, seen, shown } = finding;
  const limit = findLimit(rig, reading.check, reading.condition, quantity.id);
  const bounds = limit ? limitBounds(limit) : undefined;
  const expected = bounds ? compareMeasured(seen, bounds) : 'too-close';
  const consistent = bounds ? comparisonsHeld(finding, bounds) : [expected];
  return {
    seq: finding.seq,
    check: reading.check,
    condition: reading.condition,
    quantity: quantity.id,
    expectedVerdict: verdictOf(expected),
    verdictRight: consistent.some((comparison) => verdictOf(comparison) === act.verdict),
    shown: shown.kind === 'codes' ? null : seen.value,
    uncertainty: shown.kind === 'codes' ? null : seen.uncertainty,
    limit: limit?.id ?? null,
    limitRight: act.limit === (limit?.id ?? null),
    comparisonRight: consistent.includes(act.comparison) && verdictOf(act.comparison) === act.verdict,
    dialRight: dialRight(finding),
    ...gradeImplication(act, byArea(particles, before), byArea(particles, after)),
  };
}

/** Comparisons that either the true needle or the learner's own reading of it supports. */
function comparisonsHeld({ act, seen, shown }: JudgedFinding, bounds: Bounds): Comparison[] {
  const held = [compareMeasured(seen, bounds)];
  if (act.entered && shown.kind === 'value') {
    held.push(compare(toSi(act.entered.value, act.entered.unit), bounds, seen.uncertainty));
  }
  return held;
}

/** Within half of the smallest division of where the needle stands. */
function dialRight({ act, gauge, shown }: JudgedFinding): boolean | null {
  if (!act.entered || !gauge.scale || shown.kind !== 'value') return null;
  const entered = fromSi(toSi(act.entered.value, act.entered.unit), gauge.unit);
  // A value converted by hand to another unit is rounded: a hundredth of a division is not a misreading.
  return Math.abs(entered - shown.value) <= gauge.scale.minor * 0.51;
}

function gradeImplication(act: FindingAct, before: Record<Area, number>, after: Record<Area, number>) {
  const cleared = (area: Area) => after[area] < CLEARED_BELOW * before[area] || after[area] < HARDLY;
  return {
    clears: act.clears.map((area) => ({ area, right: cleared(area) })),
    suspects: act.suspects.map((area) => ({ area, right: after[area] >= SUSPECT_FROM })),
  };
}
