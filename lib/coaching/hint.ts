import { type Area, areas } from '../areas';
import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import { type Belief, beliefAtStart, entropy, updateBelief } from '../diagnosis/belief';
import { readingsOf, SETTLED } from '../diagnosis/expert-route';
import { type CheckWorth, hookUpKey, nextChecks } from '../diagnosis/next-check';
import { type Particles, particlesOf } from '../diagnosis/particles';
import { byArea, byRepair } from '../diagnosis/shares';
import { type Act, type HintAct, instrumentsDestroyed, type ReadingAct } from '../grading/acts';

/** Why a check is hinted at, stored with the hint as it was said. */
export interface HintReason {
  /** Share of what is still open about the repair that the check is expected to settle, 0…1. */
  settles: number;
  minutes: number;
  /** Areas that carry most of the suspicion, the most suspect first. */
  areas: readonly Area[];
}

/** A hint as it is stored. Null in both where nothing is left to hint at: enough is known, or no check tells more. */
export interface ReasonedHint extends HintAct {
  why: HintReason | null;
}

/** A check that is expected to settle less than this share of what is open is not worth a hint. */
const HARDLY_ANYTHING = 0.02;
/** An area that carries less of the suspicion is not named. */
const NAMED = 0.1;
const MOST_NAMED = 3;

/**
 * The check that would tell most per minute now: from the work order and what the instruments have shown so far, and from
 * nothing else. Two cases that have shown the same get the same hint, whatever is hidden in them.
 */
export function hintFor(theCase: Case, catalogue: Catalogue, acts: readonly Act[]): ReasonedHint {
  const particles = particlesOf(theCase, catalogue);
  const readings = acts.filter((act): act is ReadingAct => act.kind === 'reading');
  const belief = beliefAfter(readings, particles, catalogue);
  const repairs = [...byRepair(particles, belief).values()];
  const best = openChecks(readings, particles, belief, catalogue)[0];
  const settles = best ? Math.min(1, best.gain / entropy(repairs)) : 0;
  if (!best || Math.max(...repairs) >= SETTLED || settles < HARDLY_ANYTHING)
    return { kind: 'hint', next: null, why: null };
  const { check, condition, instrument, minutes } = best;
  return {
    kind: 'hint',
    next: { check, condition, instrument },
    why: { settles: rounded(settles), minutes, areas: suspectAreas(particles, belief) },
  };
}

function beliefAfter(readings: readonly ReadingAct[], particles: Particles, catalogue: Catalogue): Belief {
  return readings
    .flatMap((act) => readingsOf(catalogue, act, act.shown))
    .reduce((belief, reading) => updateBelief(belief, particles, reading), beliefAtStart(particles));
}

/** Best first, without hook-ups that have told what they can and without instruments that are lost. */
function openChecks(
  readings: readonly ReadingAct[],
  particles: Particles,
  belief: Belief,
  catalogue: Catalogue,
): CheckWorth[] {
  const told = readings.filter((act) => readingsOf(catalogue, act, act.shown).length > 0);
  const done = new Set(told.map(({ check, condition }) => hookUpKey(check, condition)));
  const lost = instrumentsDestroyed(readings);
  return nextChecks(particles, belief, done).filter(({ instrument }) => !lost.has(instrument));
}

function suspectAreas(particles: Particles, belief: Belief): Area[] {
  const shares = byArea(particles, belief);
  return areas
    .filter((area) => shares[area] >= NAMED)
    .sort((a, b) => shares[b] - shares[a])
    .slice(0, MOST_NAMED);
}

/** To a hundredth: nobody is told more digits than that. */
function rounded(share: number): number {
  return Math.round(share * 100) / 100;
}
