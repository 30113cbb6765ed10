import type { Area } from '../areas';
import type { Case } from '../cases/case';
import { gaugeFor, performCheck } from '../cases/perform-check';
import type { Catalogue } from '../catalogue';
import { measured } from '../checks/expected';
import type { Shown } from '../checks/shown';
import { type Belief, beliefAtStart, type Reading, updateBelief } from './belief';
import { type CheckWorth, hookUpKey, NOTHING_TOLD, nextChecks, type RouteStep } from './next-check';
import type { Particles } from './particles';
import { byArea, byCause, byRepair } from './shares';

/** One step of an expert, with the belief in each area after it. */
export interface ExpertStep extends RouteStep {
  areas: Record<Area, number>;
}

/** What the expert did, in order. */
export interface ExpertRoute {
  steps: readonly ExpertStep[];
  minutes: number;
  /** What each step's instrument showed. */
  shown: readonly (readonly Shown[])[];
  /** After each step. */
  beliefs: readonly Belief[];
  /** At the end. */
  belief: Belief;
}

/** Belief in one repair at which an expert stops looking. */
export const SETTLED = 0.95;
const LONGEST_ROUTE = 12;

/**
 * The route of somebody who always makes the check that tells most per minute about what to repair, by the belief held at
 * that moment, until one repair is settled or no check tells more. Then the part itself is measured, unless it was
 * already: an expert condemns none unmeasured. Everything is read off the case as a learner reads it.
 */
export function expertRoute(theCase: Case, catalogue: Catalogue, particles: Particles): ExpertRoute {
  const route = new Route(theCase, catalogue, particles);
  while (route.length < LONGEST_ROUTE && !route.settled()) {
    const [best] = route.open();
    if (!best || best.gain < NOTHING_TOLD) break;
    route.make(best);
  }
  const proof = route.measuringThePart();
  if (proof) route.make(proof);
  return route.asFollowed();
}

/** A route while it is made. */
class Route {
  private readonly steps: ExpertStep[] = [];
  private readonly shown: Shown[][] = [];
  private readonly beliefs: Belief[] = [];
  private readonly done = new Set<string>();

  constructor(
    private readonly theCase: Case,
    private readonly catalogue: Catalogue,
    private readonly particles: Particles,
  ) {}

  get length(): number {
    return this.steps.length;
  }

  private get belief(): Belief {
    return this.beliefs[this.beliefs.length - 1] ?? beliefAtStart(this.particles);
  }

  settled(): boolean {
    return Math.max(...byRepair(this.particles, this.belief).values()) >= SETTLED;
  }

  open(): CheckWorth[] {
    return nextChecks(this.particles, this.belief, this.done);
  }

  make({ check, condition, instrument, minutes }: RouteStep): void {
    const read = performCheck(this.theCase, this.catalogue, { check, condition, instrument });
    if ('error' in read) throw new RangeError(`${check} at ${condition} with ${instrument}: ${read.error}`);
    const readings = readingsOf(this.catalogue, { check, condition, instrument }, read.shown);
    const belief = readings.reduce((before, reading) => updateBelief(before, this.particles, reading), this.belief);
    this.done.add(hookUpKey(check, condition));
    this.shown.push(read.shown);
    this.beliefs.push(belief);
    this.steps.push({ check, condition, instrument, minutes, areas: byArea(this.particles, belief) });
  }

  /** The first check still open that measures the part believed to be at fault, where none on the route has. */
  measuringThePart(): RouteStep | undefined {
    const [believed] = [...byCause(this.particles, this.belief)].sort(([, a], [, b]) => b - a);
    const proofs = this.catalogue.causes.get(believed?.[0] ?? '')?.provenBy ?? [];
    if (proofs.some(({ check, condition }) => this.done.has(hookUpKey(check, condition)))) return undefined;
    return this.open().find(({ check, condition }) =>
      proofs.some((proof) => proof.check === check && proof.condition === condition),
    );
  }

  asFollowed(): ExpertRoute {
    const { steps, shown, beliefs, belief } = this;
    return { steps, minutes: steps.reduce((sum, { minutes }) => sum + minutes, 0), shown, beliefs, belief };
  }
}

/** What belief can learn from one hook-up: every quantity that was measured. */
export function readingsOf(
  { checks, gauges }: Catalogue,
  { check: checkId, condition, instrument }: Omit<RouteStep, 'minutes'>,
  shown: readonly Shown[],
): Reading[] {
  const [check, gauge] = [checks.get(checkId), gauges.get(instrument)];
  if (!check || !gauge) return [];
  return shown.flatMap((one) => {
    const quantity = check.quantities.find(({ id }) => id === one.quantity);
    const seen = quantity && measured(one, gaugeFor(gauge, quantity));
    return quantity && seen ? [{ check: checkId, condition, quantity, seen }] : [];
  });
}
