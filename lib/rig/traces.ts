import type { Fuel } from '../fluids/fuel';
import type { Rig } from './rig';
import type { Setting } from './setting';
import type { Trace, TraceId } from './trace';

/** The traces of one rig in one setting, each computed when it is first asked for. */
export class Traces {
  readonly #known = new Map<TraceId, Trace>();

  constructor(
    private readonly rig: Rig,
    private readonly setting: Setting,
    private readonly fuel: Fuel,
  ) {}

  get(id: TraceId): Trace {
    const known = this.#known.get(id) ?? { id, lines: [], features: {} };
    this.#known.set(id, known);
    return known;
  }
}
