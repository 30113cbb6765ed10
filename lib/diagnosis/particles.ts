import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import type { Quantity } from '../checks/check';
import { trueValue } from '../checks/quantity';
import { canHappen } from '../faults/apply-cause';
import type { Cause } from '../faults/cause';
import type { ConditionId } from '../rig/condition';
import { PointsOnDemand } from '../rig/points-on-demand';
import type { RigState } from '../rig/rig-state';
import { Traces } from '../rig/traces/traces';
import { type Candidate, candidatesOf } from './candidates';
import { interpolate } from './interpolate';
import { SLICES, type Strata, strataOf } from './strata';
import { type Single, type Weighed, type WorkOrderFacts, weigh } from './weigh';

/** What is known of a case before anything is measured; of its points, only in which conditions the engine runs. */
export type Known = WorkOrderFacts & Pick<Case, 'setting' | 'points'>;

/** ~50 ms: once a request, then handed on. */
export function particlesOf(known: Known, catalogue: Catalogue): Particles {
  return new Particles(known, catalogue);
}

/** What one quantity would read under each particle, SI, and the standard spread of that over the slice it stands for. */
export interface Values {
  expected: Float64Array;
  spread: Float64Array;
}

/** Particles less likely than this share of the likeliest are let go once the work order is read. */
const LET_GO = 1e-5;
/** What two causes do together is known to this share of what they do apart. Assumed. */
const INTERPLAY = 0.15;
/** Standard spread of a slice of width 1, taken as evenly filled. */
const EVEN = 1 / Math.sqrt(12);

/**
 * Everything that could be wrong, as particles: every cause at a spread of severities and, where two may be wrong, every two
 * that may go together. A severity is solved in a condition when something first asks for it.
 */
export class Particles {
  readonly count: number;
  /** One cause a particle, or two. */
  readonly causes: readonly (readonly Cause[])[];
  /** 0…1, one for each of the causes. */
  readonly severities: readonly (readonly number[])[];
  /** Belief once the work order is read; sums to 1. */
  readonly start: Float64Array;
  /** What can be looked at next. */
  readonly candidates: readonly Candidate[];
  readonly #weighed: readonly Weighed[];
  readonly #sound: RigState;
  readonly #values = new Map<string, Values>();

  /** @throws RangeError when content has no such fuel. */
  constructor(known: Known, catalogue: Catalogue) {
    const { rig, setting } = known;
    const fuel = catalogue.fuels.get(setting.fuel);
    if (!fuel) throw new RangeError(`Content has no fuel ${setting.fuel}`);
    const points = new PointsOnDemand(rig, setting, fuel);
    const causes = [...catalogue.causes.values()].filter((cause) => canHappen(rig, cause, setting));
    const weighed = weigh(
      known,
      causes.map((cause) => strataOf(rig, setting, fuel, cause, points)),
    );
    const likeliest = weighed.reduce((most, { weight }) => Math.max(most, weight), 0);
    const kept = weighed.filter(({ weight }) => weight > LET_GO * likeliest);
    const total = kept.reduce((sum, { weight }) => sum + weight, 0);
    this.count = kept.length;
    this.causes = kept.map(({ first, second }) => [first.strata.cause, ...(second ? [second.strata.cause] : [])]);
    this.severities = kept.map(({ first, second }) => [
      first.slice.severity,
      ...(second ? [second.slice.severity] : []),
    ]);
    this.start = Float64Array.from(kept, ({ weight }) => weight / total);
    this.candidates = candidatesOf(known, catalogue);
    this.#weighed = kept;
    this.#sound = { points, traces: new Traces(rig, setting, fuel) };
  }

  /** What a quantity that is measured at rest would read. */
  valuesOf(check: string, quantity: Quantity, condition: ConditionId): Values {
    const key = `${check} ${quantity.id} ${condition}`;
    const values = this.#values.get(key) ?? this.compute(quantity, condition, () => true);
    this.#values.set(key, values);
    return values;
  }

  /** The same of a trace, for those particles only that are worth the milliseconds it takes to follow; NaN for the rest. */
  tracedValuesOf(quantity: Quantity, condition: ConditionId, worth: (particle: number) => boolean): Values {
    return this.compute(quantity, condition, (particle) => worth(particle) && !this.#weighed[particle]?.second);
  }

  private compute(quantity: Quantity, condition: ConditionId, asked: (particle: number) => boolean): Values {
    const read = nodeReader(quantity, condition);
    const paired = this.#weighed.some(({ second }) => second);
    const sound = paired ? trueValue(this.#sound, condition, quantity, 0) : 0;
    const expected = new Float64Array(this.count).fill(Number.NaN);
    const spread = new Float64Array(this.count);
    const over = new Map<Single, Over>();
    const overOnce = (single: Single) => {
      const known = over.get(single) ?? valueOver(single, read, quantity);
      over.set(single, known);
      return known;
    };
    this.#weighed.forEach(({ first, second }, particle) => {
      if (!asked(particle)) return;
      const one = overOnce(first);
      const both = second ? together(one, overOnce(second), sound, quantity) : one;
      expected[particle] = both.value;
      spread[particle] = both.spread;
    });
    return { expected, spread };
  }
}

/** A value in the middle of a slice, and its standard spread over it. */
interface Over {
  value: number;
  spread: number;
}

type NodeReader = (strata: Strata, node: number) => number;

/** Reads a quantity off a solved severity, once each. */
function nodeReader(quantity: Quantity, condition: ConditionId): NodeReader {
  const known = new Map<RigState, number>();
  return ({ nodes }, node) => {
    const state = nodes[node] as RigState;
    const value = known.get(state) ?? trueValue(state, condition, quantity, 0);
    known.set(state, value);
    return value;
  };
}

function valueOver({ strata, slice, standsFor }: Single, read: NodeReader, { grades }: Quantity): Over {
  const at = (node: number) => read(strata, node);
  const { lower, upper, share } = slice;
  // A grade has nothing between it and the next.
  if (grades || lower === upper) return { value: at(share < 0.5 ? lower : upper), spread: 0 };
  const along = (place: number) => interpolate(at, strata.nodes.length, lower, place);
  const width = along(share + 0.5 / SLICES) - along(share - 0.5 / SLICES);
  const spread = Number.isFinite(width) ? Math.abs(width) * standsFor * EVEN : 0;
  return { value: along(share), spread };
}

/** Beyond this ratio to the sound rig, what two causes do is no longer multiplied. */
const FAR = 30;

/**
 * What two causes do together, from what each does alone: their ratios to the sound rig multiply where all have one sign;
 * otherwise their differences add up.
 */
function together(one: Over, other: Over, sound: number, { grades }: Quantity): Over {
  if (grades) return { value: Math.max(one.value, other.value), spread: 0 };
  const [a, b] = [one.value / sound, other.value / sound];
  const multiplies = a > 1 / FAR && b > 1 / FAR && a < FAR && b < FAR;
  const value = multiplies ? a * b * sound : one.value + other.value - sound;
  const interplay = INTERPLAY * Math.min(Math.abs(one.value - sound), Math.abs(other.value - sound));
  return { value, spread: Math.hypot(one.spread, other.spread, interplay) };
}
