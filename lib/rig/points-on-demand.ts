import type { Fuel } from '../fluids/fuel';
import type { SteadyConditionId } from './condition';
import {
  comeToRest,
  type Nearby,
  type OperatingPoint,
  type OperatingPoints,
  pointAt,
  type Rested,
} from './operating-point';
import type { Rig } from './rig';
import type { Setting } from './setting';

/**
 * The operating points of one of many rigs that differ little: each solved when first asked for, setting out from the
 * same condition of a rig nearby.
 */
export class PointsOnDemand implements OperatingPoints {
  readonly #nearby = new Map<SteadyConditionId, Nearby>();
  readonly #points = new Map<SteadyConditionId, OperatingPoint>();

  constructor(
    private readonly rig: Rig,
    private readonly setting: Setting,
    private readonly fuel: Fuel,
    private readonly near?: PointsOnDemand,
  ) {}

  get 'key-on'() {
    return this.at('key-on');
  }

  get cranking() {
    return this.at('cranking');
  }

  get idle() {
    return this.at('idle');
  }

  get 'high-idle'() {
    return this.at('high-idle');
  }

  get 'full-load'() {
    return this.at('full-load');
  }

  get 'key-off'() {
    return this.at('key-off');
  }

  private at(condition: SteadyConditionId): OperatingPoint {
    const { rig, setting, fuel } = this;
    const known = this.#points.get(condition);
    if (known) return known;
    const rested = this.comeToRest(condition);
    const point = pointAt(rig, setting, fuel, condition, rested);
    this.#points.set(condition, point);
    return point;
  }

  /** Where others may set out from: the nearest that was solved already, or else the first of all. */
  private nearby(condition: SteadyConditionId): Nearby {
    const known = this.#nearby.get(condition);
    return known ?? (this.near ? this.near.nearby(condition) : this.comeToRest(condition));
  }

  private comeToRest(condition: SteadyConditionId): Rested {
    const { rig, setting, fuel, near } = this;
    const rested = comeToRest(rig, setting, fuel, condition, near?.nearby(condition));
    // Without the laws it was solved with, which would weigh a hundred times as much.
    this.#nearby.set(condition, { assumed: rested.assumed, solution: rested.solution });
    return rested;
  }
}
