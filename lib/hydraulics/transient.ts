import type { Pascal, Second } from '../units';
import type { FlowAndSlopes } from './elements/element';
import type { Network, Solution } from './network';
import { StoreNetwork } from './store-network';
import { errorShareOfLine, errorShareOfParabola } from './transient-bdf';
import { StepError, TooManyStepsError } from './transient-error';
import { History } from './transient-history';
import type { Moment, MomentPressures, NetworkOverTime, TransientOptions } from './transient-options';
import { Pace } from './transient-pace';

const TOLERANCE = 1e-3;
/** Errors below this do not count, whatever the pressure. */
const ABSOLUTE_TOLERANCE: Pascal = 20;
const MOST_STEPS = 50_000;
/** Breaks no further apart than this are one, or rounding would make a step of them. */
const SAME_BREAK: Second = 1e-9;
/** How long before a break its last step looks at the laws, as a share of the step and of the time. */
const BEFORE_BREAK = { ofStep: 1e-6, ofTime: 1e-12 };

/**
 * Follows a network whose nodes hold fuel from `start` until `until`, by BDF2 on the volumes held, with adaptive steps.
 *
 *     (α₀ S_i(p) + α₁ S_i(p₋₁) + α₂ S_i(p₋₂)) / h + Q_out,i(p) = 0
 *
 * Each step is one implicit solve of the same elements by the same solver as the steady state, which is what the steps
 * come to rest at. Volume is conserved as exactly as the solver balances. L-stable at infinity: rail and check-valve
 * stiffness cost no steps. The first step, and the first after each break, is backward Euler.
 *
 * @param keep  What to keep of each moment, the first included; undefined keeps nothing of it.
 * @throws StepError (a SolveError) when the smallest step has no solution; TooManyStepsError.
 */
export function followTransient(network: NetworkOverTime, options: TransientOptions): MomentPressures[];
export function followTransient<T>(
  network: NetworkOverTime,
  options: TransientOptions,
  keep: (moment: Moment) => T | undefined,
): T[];
export function followTransient<T>(
  network: NetworkOverTime,
  options: TransientOptions,
  keep: (moment: Moment) => T | MomentPressures | undefined = copyPressures,
): (T | MomentPressures)[] {
  const transient = new Transient(network, options);
  const kept: (T | MomentPressures)[] = [];
  do {
    const of = keep(transient.moment);
    if (of !== undefined) kept.push(of);
  } while (transient.advance());
  return kept;
}

function copyPressures({ time, pressures }: Moment): MomentPressures {
  return { time, pressures: pressures.slice() };
}

class Transient {
  readonly moment: Moment;
  private readonly history: History;
  private readonly pace: Pace;
  private readonly stored: StoreNetwork;
  private readonly stops: readonly Second[];
  private nextStop = 0;
  private tries = 0;

  constructor(
    private readonly network: NetworkOverTime,
    private readonly options: TransientOptions,
  ) {
    const { start, stores, until, breaks = [] } = options;
    const first = this.networkAt(0);
    this.history = new History(start.length);
    this.pace = new Pace(options);
    this.stored = new StoreNetwork(first, stores);
    this.stops = stopsOf(breaks, until);
    this.history.last.pressures.set(start.map((pressure, node) => first.fixed[node] ?? pressure));
    this.stored.fill(this.history.last);
    this.moment = this.firstMoment(first);
    this.pace.restart(this.stops[0] as Second);
  }

  /** Takes one step, cut until it can be solved and its error is allowed. False when the end was reached before. */
  advance(): boolean {
    const stop = this.stops[this.nextStop];
    if (stop === undefined) return false;
    const { mostSteps = MOST_STEPS } = this.options;
    do {
      if (this.tries++ === mostSteps) throw new TooManyStepsError(mostSteps, this.moment.time);
    } while (!this.tryStep(stop));
    if (this.moment.time === stop) this.passStop(stop);
    return true;
  }

  /** Whether a step towards a stop stands; if not, the next one will be shorter. */
  private tryStep(stop: Second): boolean {
    const { history, pace } = this;
    const { time } = history.last;
    const length = pace.lengthWithin(stop - time);
    history.next.time = length === stop - time ? stop : time + length;
    history.aimAt(history.next.time);
    const solution = this.solve(length, this.seenTime(stop, length));
    if (!solution) return false;
    copy(solution.pressures, history.next.pressures);
    this.stored.fill(history.next);
    const error = this.errorOf(length);
    const order = Math.max(1, history.length - 1);
    if (!pace.allows(length, error)) {
      pace.shorten(length, error, order);
      return false;
    }
    pace.grow(length, error, order);
    this.accept(solution);
    return true;
  }

  /** The time at which a step to the history's next instant sees laws and controller. */
  private seenTime(stop: Second, length: Second): Second {
    const { time } = this.history.next;
    if (time !== stop || this.nextStop === this.stops.length - 1) return time;
    return time - Math.max(BEFORE_BREAK.ofStep * length, BEFORE_BREAK.ofTime * time);
  }

  private solve(length: Second, seen: Second): Solution | undefined {
    const { history, stored } = this;
    const network = this.networkAt(seen);
    const demand = this.options.controller?.demand(seen, history.last.pressures) ?? 0;
    const ahead = stored.step(network, history, length, demand, 'ahead');
    if (!('code' in ahead)) return ahead;
    // Far from where the history pointed, the last instant may be the better guess.
    const outcome = stored.step(network, history, length, demand, 'last');
    if (!('code' in outcome)) return outcome;
    if (!this.pace.halve(length)) throw new StepError(outcome, history.last.time, length);
    return undefined;
  }

  /** Error of the step just solved over what is allowed; nothing is known about the first one. */
  private errorOf(length: Second): number {
    const { history, stored } = this;
    if (history.length === 1) return 0;
    const share =
      history.length === 2
        ? errorShareOfLine(length, history.gap(0))
        : errorShareOfParabola(length, history.gap(0), history.gap(1));
    return share * stored.largestGap(history, this.options.tolerance ?? TOLERANCE, ABSOLUTE_TOLERANCE);
  }

  private accept({ flows, demand }: Solution): void {
    this.history.accept();
    Object.assign(this.moment, this.history.last);
    this.moment.flows = flows;
    this.moment.demand = demand;
    this.options.controller?.accept?.(this.moment.time, this.moment.pressures);
  }

  /** What comes after a break does not continue what was before it. */
  private passStop(stop: Second): void {
    this.history.restart();
    this.nextStop++;
    this.pace.restart((this.stops[this.nextStop] ?? stop) - stop);
  }

  private firstMoment({ branches }: Network): Moment {
    const { pressures, volumes } = this.history.last;
    const demand = this.options.controller?.demand(0, pressures) ?? 0;
    const result: FlowAndSlopes = { flow: 0, perInlet: 0, perOutlet: 0, perDemand: 0 };
    const flows = Float64Array.from(branches, ({ law, from, to }) => {
      law(pressures[from] as number, pressures[to] as number, result, demand);
      return result.flow;
    });
    return { time: 0, pressures, volumes, flows, demand };
  }

  private networkAt(time: Second): Network {
    return typeof this.network === 'function' ? this.network(time) : this.network;
  }
}

/** Where steps must end, in order: the breaks, then the end. */
function stopsOf(breaks: readonly Second[], until: Second): Second[] {
  const stops: Second[] = [];
  for (const time of [...breaks].sort((a, b) => a - b)) {
    if (time - (stops.at(-1) ?? 0) > SAME_BREAK && until - time > SAME_BREAK) stops.push(time);
  }
  return [...stops, until];
}

/** Copies as much as fits: the solver's pressures have the stores' node at their end. */
function copy(from: Float64Array, to: Float64Array): void {
  for (let node = 0; node < to.length; node++) to[node] = from[node] as number;
}
