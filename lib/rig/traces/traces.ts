import type { Fuel } from '../../fluids/fuel';
import type { Rig } from '../rig';
import type { Setting } from '../setting';
import { crankTrace } from './crank';
import { decayTrace } from './decay';
import type { Scene } from './manoeuvre';
import { primeTrace } from './prime';
import { snapTrace } from './snap';
import { tankVacuumTrace } from './tank-vacuum';
import type { Trace, TraceId } from './trace';

const manoeuvres: Record<TraceId, (scene: Scene) => Trace> = {
  prime: primeTrace,
  crank: crankTrace,
  'tank-vacuum': tankVacuumTrace,
  snap: snapTrace,
  decay: decayTrace,
};

/** The traces of one rig in one setting, each computed when it is first asked for. */
export class Traces {
  readonly #known = new Map<TraceId, Trace>();
  private readonly scene: Scene;

  constructor(rig: Rig, setting: Setting, fuel: Fuel) {
    this.scene = { rig, setting, fuel };
  }

  /** @throws SolveError when a step has no solution. */
  get(id: TraceId): Trace {
    const trace = this.#known.get(id) ?? manoeuvres[id](this.scene);
    this.#known.set(id, trace);
    return trace;
  }
}
