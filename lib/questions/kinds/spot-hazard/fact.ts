import type { Value } from '../../line';

/** Something to be seen in the bay, with what makes it dangerous or not. */
export interface Fact {
  /** Which thing it is; its words are `hazard-…` or `safe-…`, with `why-…` and `first-…`. */
  id: string;
  hazard: boolean;
  /** Beside safe working. */
  topics: readonly string[];
  cautions: readonly string[];
  with: Readonly<Record<string, Value>>;
  /** Whether a number of this rig decides it. */
  computed: boolean;
  /** Of one group only one is seen at a time. */
  group: string;
}
