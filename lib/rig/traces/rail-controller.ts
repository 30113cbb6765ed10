import type { Controller } from '../../hydraulics/transient-options';
import type { Pascal, Second } from '../../units';
import type { Rig } from '../rig';
import { type SensorLine, sensedPressure } from '../sensor-line';

/** What the controller is told at a time. */
export interface Command {
  pressure: Pascal;
  /** Demand of a sound rig there, from the control unit's own map. */
  baseDemand: number;
}

export interface RailControllerOptions {
  control: Rig['control'];
  sensor: SensorLine;
  fullScale: Pascal;
  ambient: Pascal;
  /** Index of the rail's node. */
  node: number;
  command: (time: Second) => Command;
}

/**
 * Keeps the metering valve dry until the low-pressure circuit has filled: before that no fuel reaches it, whatever it asks.
 *
 * @param full  Absolute pressure of the priming node from which the circuit is full.
 */
export function onceFull(controller: RailController, node: number, full: Pascal): Controller {
  let filled = false;
  return {
    demand: (time, pressures) => (filled ? controller.demand(time, pressures) : 0),
    accept(time, pressures) {
      filled ||= (pressures[node] as number) >= full;
      if (filled) controller.accept(time, pressures);
      else controller.wait(time);
    },
  };
}

/** Errors larger than this and moving faster are on their way somewhere; integrating them would overshoot. Assumed. */
const INTEGRATED_WITHIN: Pascal = 6e6;
/** Pa/s. An error that moves no faster stays unless the integral sees to it. Assumed. */
const STALLED: number = 5e6;

/**
 * Proportional and integral control of rail pressure around the control unit's own map:
 *
 *     u = u₀ + k_p e + k_i ∫ e dt,  0…1     e = commanded − sensed
 *
 * The integral stands still while the demand is at its end and the error would drive it further, and far from the command as
 * long as the error moves by itself. Without a signal that it believes the control unit holds a fixed demand.
 */
export class RailController implements Controller {
  private integral = 0;
  private last: Second = 0;
  private lastError: Pascal = Number.POSITIVE_INFINITY;

  constructor(private readonly options: RailControllerOptions) {}

  demand(time: Second, pressures: Float64Array): number {
    const { control, sensor } = this.options;
    return sensor.believed ? Math.min(1, Math.max(0, this.wanted(time, pressures))) : control.limpDemand;
  }

  accept(time: Second, pressures: Float64Array): void {
    const error = this.error(time, pressures);
    const wanted = this.wanted(time, pressures);
    const stuck = (wanted >= 1 && error > 0) || (wanted <= 0 && error < 0);
    const moving = Math.abs(error - this.lastError) > STALLED * (time - this.last);
    if (!stuck && !(moving && Math.abs(error) >= INTEGRATED_WITHIN)) this.integral += error * (time - this.last);
    this.last = time;
    this.lastError = error;
  }

  /** Lets time pass without drawing anything from it. */
  wait(time: Second): void {
    this.last = time;
  }

  /** Demand before it meets its ends. Gains are per megapascal. */
  private wanted(time: Second, pressures: Float64Array): number {
    const { control, command } = this.options;
    const reaction = control.proportionalPerMpa * this.error(time, pressures);
    return command(time).baseDemand + (reaction + control.integralPerMpaSecond * this.integral) / 1e6;
  }

  private error(time: Second, pressures: Float64Array): Pascal {
    const { sensor, fullScale, ambient, node, command } = this.options;
    return command(time).pressure - sensedPressure(sensor, (pressures[node] as number) - ambient, fullScale);
  }
}
