import type { Quantity } from '../checks/check';
import { trueValue } from '../checks/quantity';
import type { ConditionId } from '../rig/condition';
import { interpolate } from './interpolate';
import type { Values } from './particles';
import type { Strata } from './strata';
import type { Single } from './weigh';

/** Standard spread of a slice of width 1, taken as evenly filled. */
const EVEN = 1 / Math.sqrt(12);

/** Readings of single causes at their slices, solved at no more severities than those need. */
export class SingleValues {
  readonly count: number;
  readonly #strata: readonly Strata[];
  readonly #strataOf: Int32Array;

  constructor(private readonly singles: readonly Single[]) {
    this.count = singles.length;
    this.#strata = [...new Set(singles.map(({ strata }) => strata))];
    const indexOf = new Map(this.#strata.map((strata, index) => [strata, index]));
    this.#strataOf = Int32Array.from(singles, ({ strata }) => indexOf.get(strata) ?? -1);
  }

  /** @param asked  1 for each single that is wanted; NaN stands for the others. All where it is left out. */
  valuesOf(quantity: Quantity, condition: ConditionId, asked?: Uint8Array): Values {
    const nodes = this.#strata.map((strata) => new Float64Array(strata.nodes.length).fill(Number.NaN));
    const expected = new Float64Array(this.count).fill(Number.NaN);
    const spread = new Float64Array(this.count);
    for (let index = 0; index < this.count; index++) {
      if (asked && !asked[index]) continue;
      const single = this.singles[index] as Single;
      const values = nodes[this.#strataOf[index] as number] as Float64Array;
      readAround(values, single, quantity, condition);
      expected[index] = middleOf(values, single, quantity);
      spread[index] = spreadOf(values, single, quantity);
    }
    return { expected, spread };
  }
}

/** Reads a quantity off the solved severities on either side of a slice and off their neighbours. */
function readAround(values: Float64Array, { strata, slice }: Single, quantity: Quantity, condition: ConditionId): void {
  const { nodes } = strata;
  const last = Math.min(nodes.length - 1, slice.lower + 2);
  for (let node = Math.max(0, slice.lower - 1); node <= last; node++) {
    const state = nodes[node];
    if (state && Number.isNaN(values[node])) values[node] = trueValue(state, condition, quantity, 0);
  }
}

/** A reading in the middle of a slice. */
function middleOf(values: Float64Array, { slice: { lower, share } }: Single, { grades }: Quantity): number {
  // A grade has nothing between it and the next.
  if (grades) return values[share < 0.5 ? lower : lower + 1] as number;
  return interpolate(values, lower, share);
}

/** Standard spread of a reading over its slice. */
function spreadOf(values: Float64Array, { slice, standsFor, strata }: Single, { grades }: Quantity): number {
  if (grades || standsFor === 0 || strata.nodes.length === 1) return 0;
  const half = 0.5 / strata.perGap;
  const width =
    interpolate(values, slice.lower, slice.share + half) - interpolate(values, slice.lower, slice.share - half);
  return Number.isFinite(width) ? Math.abs(width) * standsFor * EVEN : 0;
}
