import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import type { Quantity } from '../checks/check';
import { trueValue } from '../checks/quantity';
import type { Cause } from '../faults/cause';
import type { ConditionId } from '../rig/condition';
import type { RigState } from '../rig/rig-state';
import { Traces } from '../rig/traces/traces';
import { type Candidate, candidatesOf } from './candidates';
import { Ground } from './ground';
import { isLikely, keepBelieved, refineBelieved } from './keep-believed';
import { SingleValues } from './single-values';
import { type Single, type Weighed, type WorkOrderFacts, weigh } from './weigh';

/** What is known of a case before anything is measured; of its points, only in which conditions the engine runs. */
export type Known = WorkOrderFacts & Pick<Case, 'setting' | 'points'>;

/** Some 100 ms: once a request, then handed on. */
export function particlesOf(known: Known, catalogue: Catalogue): Particles {
  return new Particles(known, catalogue);
}

/** What one quantity would read under each particle, SI, and the standard spread of that over the slice it stands for. */
export interface Values {
  expected: Float64Array;
  spread: Float64Array;
}

/** What two causes do together is known to this share of what they do apart. Assumed. */
const INTERPLAY = 0.15;

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
  readonly #singles: SingleValues;
  /** Each particle's causes, by the index of their slices; −1 for no second. */
  readonly #first: Int32Array;
  readonly #second: Int32Array;
  /** 1 for each single that the work order leaves likely, alone or with another. */
  readonly #near: Uint8Array;
  readonly #sound: RigState;
  readonly #values = new Map<string, Values>();

  /**
   * @param ground  Of the same rig on the same day, where many work orders share one.
   * @throws RangeError when content has no such fuel.
   */
  constructor(known: Known, catalogue: Catalogue, ground = new Ground(known.rig, known.setting, catalogue)) {
    const { sound, singles } = ground;
    const kept = keepBelieved(weigh(known, refineBelieved(ground, weigh(known, singles))));
    const total = kept.reduce((sum, { weight }) => sum + weight, 0);
    this.count = kept.length;
    this.causes = kept.map((one) => partsOf(one).map((single) => single.strata.cause));
    this.severities = kept.map((one) => partsOf(one).map(({ slice }) => slice.severity));
    this.start = Float64Array.from(kept, ({ weight }) => weight / total);
    this.candidates = candidatesOf(known, catalogue);
    const both = [...new Set(kept.flatMap(partsOf))];
    const near = new Set(kept.filter(isLikely(kept)).flatMap(partsOf));
    const indexOf = new Map(both.map((single, index) => [single, index]));
    this.#singles = new SingleValues(both);
    this.#first = Int32Array.from(kept, ({ first }) => indexOf.get(first) ?? -1);
    this.#second = Int32Array.from(kept, ({ second }) => (second && indexOf.get(second)) ?? -1);
    this.#near = Uint8Array.from(both, (single) => Number(near.has(single)));
    this.#sound = { points: sound.points, traces: new Traces(sound.rig, sound.setting, sound.fuel) };
  }

  /**
   * What a quantity that is measured at rest would read.
   *
   * @param remote  Also under particles that the work order all but rules out; NaN stands for those otherwise.
   */
  valuesOf(check: string, quantity: Quantity, condition: ConditionId, remote = false): Values {
    const key = `${check} ${quantity.id} ${condition} ${remote}`;
    const values = this.#values.get(key) ?? this.compute(quantity, condition, remote ? undefined : this.#near);
    this.#values.set(key, values);
    return values;
  }

  /** Whether the work order all but rules a particle out. */
  isRemote(particle: number): boolean {
    return !this.#near[this.#first[particle] as number];
  }

  /** The same of a trace, for those particles only that are worth the milliseconds it takes to follow; NaN for the rest. */
  tracedValuesOf(quantity: Quantity, condition: ConditionId, worth: (particle: number) => boolean): Values {
    const asked = new Uint8Array(this.#singles.count);
    for (let particle = 0; particle < this.count; particle++)
      if ((this.#second[particle] as number) < 0 && worth(particle)) asked[this.#first[particle] as number] = 1;
    return this.compute(quantity, condition, asked);
  }

  private compute(quantity: Quantity, condition: ConditionId, asked?: Uint8Array): Values {
    const alone = this.#singles.valuesOf(quantity, condition, asked);
    const expected = new Float64Array(this.count);
    const spread = new Float64Array(this.count);
    for (let particle = 0; particle < this.count; particle++) {
      const single = this.#first[particle] as number;
      expected[particle] = alone.expected[single] as number;
      spread[particle] = alone.spread[single] as number;
    }
    this.putTogether(alone, { expected, spread }, quantity, condition);
    return { expected, spread };
  }

  private putTogether(alone: Values, into: Values, quantity: Quantity, condition: ConditionId): void {
    if (!this.#second.some((single) => single >= 0)) return;
    const sound = quantity.of.kind === 'trace' ? Number.NaN : trueValue(this.#sound, condition, quantity, 0);
    for (let particle = 0; particle < this.count; particle++) {
      const second = this.#second[particle] as number;
      if (second < 0) continue;
      const one = into.expected[particle] as number;
      const other = alone.expected[second] as number;
      into.expected[particle] = together(one, other, sound, quantity);
      const interplay = quantity.grades ? 0 : INTERPLAY * Math.min(Math.abs(one - sound), Math.abs(other - sound));
      into.spread[particle] = Math.hypot(into.spread[particle] as number, alone.spread[second] as number, interplay);
    }
  }
}

function partsOf({ first, second }: Weighed): Single[] {
  return second ? [first, second] : [first];
}

/** Beyond this ratio to the sound rig, what two causes do is no longer multiplied. */
const FAR = 30;

/**
 * What two causes do together, from what each does alone: their ratios to the sound rig multiply where all have one sign;
 * otherwise their differences add up.
 */
function together(one: number, other: number, sound: number, { grades }: Quantity): number {
  if (grades) return Math.max(one, other);
  const [a, b] = [one / sound, other / sound];
  const multiplies = a > 1 / FAR && b > 1 / FAR && a < FAR && b < FAR;
  return multiplies ? a * b * sound : one + other - sound;
}
