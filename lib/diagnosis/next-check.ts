import { gaugeFor } from '../cases/perform-check';
import type { Gauge } from '../gauges/gauge';
import type { ConditionId } from '../rig/condition';
import { type Active, activeOf } from './active';
import type { Belief } from './belief';
import { type Candidate, instrumentFor } from './candidates';
import { foretell, outcomesOf } from './outcomes';
import type { Particles } from './particles';
import { valueOfLook } from './value-of-look';

/** One check as an expert makes it: the hook-up and what it costs. */
export interface RouteStep {
  check: string;
  condition: ConditionId;
  instrument: string;
  minutes: number;
}

/** What a check is worth before it is made. */
export interface CheckWorth extends RouteStep {
  /** Expected drop of the entropy of the repair decision, nats. */
  gain: number;
  perMinute: number;
  /**
   * Minutes that it saves on average, if the repairs are then tried in the order of probability over cost; where it is not
   * positive, looking costs more than trying.
   */
  saves: number;
}

/** A check that is expected to tell less than this, in nats, tells nothing. */
export const NOTHING_TOLD = 2e-3;

/**
 * Every check still open, best first by what it tells per minute: how far the entropy of the repair decision is expected to
 * drop. Outcomes stand for the whole of what may be read, evenly by weight; the same for every check and every time.
 *
 * @param done  `<check> <condition>` of hook-ups already made.
 * @source Value of information and probability over cost: Heckerman, Breese & Rommelse 1995 (CACM 38(3)), by its abstract.
 */
export function nextChecks(particles: Particles, belief: Belief, done: ReadonlySet<string>): CheckWorth[] {
  const active = activeOf(particles, belief);
  return particles.candidates
    .filter(({ check, condition }) => !done.has(hookUpKey(check.id, condition)))
    .map((candidate) => worthOf(candidate, particles, belief, active))
    .sort((a, b) => b.perMinute - a.perMinute);
}

export function hookUpKey(check: string, condition: ConditionId): string {
  return `${check} ${condition}`;
}

function worthOf(candidate: Candidate, particles: Particles, belief: Belief, active: Active): CheckWorth {
  const { check, condition } = candidate;
  const instrument = chosenInstrument(candidate, particles, belief, active.remote);
  const foretold = candidate.quantities.map((quantity) => {
    const { expected, spread } = particles.valuesOf(check.id, quantity, condition, active.remote);
    const gauge = gaugeFor(instrument, quantity);
    return foretell(gauge, expected, spread, active.index, quantity.grades !== undefined);
  });
  const look = valueOfLook(active, outcomesOf(foretold, active.truths), check.minutes);
  // A few outcomes stand for all, so that a look which tells nothing may come out just below it.
  const gain = Math.max(0, look.gain);
  return {
    check: check.id,
    condition,
    instrument: instrument.id,
    minutes: check.minutes,
    gain,
    perMinute: gain / check.minutes,
    saves: look.saves,
  };
}

function chosenInstrument(candidate: Candidate, particles: Particles, belief: Belief, remote: boolean): Gauge {
  const [quantity] = candidate.quantities;
  if (!quantity) throw new RangeError(`Check ${candidate.check.id} measures nothing that can be foretold`);
  const { expected } = particles.valuesOf(candidate.check.id, quantity, candidate.condition, remote);
  return instrumentFor(candidate, expected, belief);
}
