import type { Area } from '@/lib/areas';
import type { Case } from '@/lib/cases/case';
import { performCheck } from '@/lib/cases/perform-check';
import type { Catalogue } from '@/lib/catalogue';
import type { Shown } from '@/lib/checks/shown';
import { type Belief, beliefAtStart, updateBelief } from '@/lib/diagnosis/belief';
import { readingsOf } from '@/lib/diagnosis/expert-route';
import { type CheckWorth, hookUpKey, nextChecks } from '@/lib/diagnosis/next-check';
import { type Particles, particlesOf } from '@/lib/diagnosis/particles';
import { repairOrder } from '@/lib/diagnosis/repair-order';
import { byArea, byCause, byRepair, repairDecision, repairMinutes } from '@/lib/diagnosis/shares';
import { type FindingArgument, instrumentFor } from './finding-argument';

/** What is believed of a case after some readings, and what to do next. Says nothing of the truth. */
export interface Advice {
  caseCode: string;
  findings: { check: string; condition: string; instrument: string; readings: Shown[] }[];
  /** Most believed first. */
  causes: { id: string; belief: number }[];
  areas: Record<Area, number>;
  /** In the order that costs least, if nothing more were looked at. */
  repairs: { id: string; belief: number; minutes: number; order: number }[];
  /** What tells most per minute first: nats, nats per minute, minutes saved. */
  next: CheckWorth[];
}

/** Reads each finding off the case, in their order, and follows belief. */
export function adviseOn(theCase: Case, catalogue: Catalogue, asked: readonly FindingArgument[]): Advice {
  const particles = particlesOf(theCase, catalogue);
  const done = new Set<string>();
  let belief = beliefAtStart(particles);
  const findings = asked.map((finding) => {
    const { check, condition } = finding;
    const best = () => nextChecks(particles, belief, done);
    const instrument = instrumentFor(catalogue, finding, best);
    const hookUp = { check, condition, instrument };
    const read = performCheck(theCase, catalogue, hookUp);
    if ('error' in read) throw new RangeError(`${check} at ${condition} with ${instrument}: ${read.error}`);
    const seen = readingsOf(catalogue, hookUp, read.shown);
    belief = seen.reduce((before, reading) => updateBelief(before, particles, reading), belief);
    done.add(hookUpKey(check, condition));
    return { ...hookUp, readings: read.shown.map(withoutCurves) };
  });
  return {
    caseCode: theCase.code,
    findings,
    ...sharesOf(particles, belief),
    next: nextChecks(particles, belief, done),
  };
}

/** A recorded curve is thousands of numbers; what is read off it stands beside it. */
function withoutCurves(shown: Shown): Shown {
  if (!('lines' in shown)) return shown;
  const { lines: _curves, ...read } = shown;
  return read;
}

function sharesOf(particles: Particles, belief: Belief): Pick<Advice, 'causes' | 'areas' | 'repairs'> {
  const causes = [...byCause(particles, belief)].map(([id, share]) => ({ id, belief: share }));
  return {
    causes: causes.sort((a, b) => b.belief - a.belief),
    areas: byArea(particles, belief),
    repairs: repairsOf(particles, belief),
  };
}

function repairsOf(particles: Particles, belief: Belief): Advice['repairs'] {
  const minutes = new Map(particles.causes.map((causes) => [repairDecision(causes), repairMinutes(causes)]));
  const repairs = [...byRepair(particles, belief)].map(([id, share]) => ({
    id,
    belief: share,
    minutes: minutes.get(id) ?? 0,
  }));
  const order = repairOrder(repairs.map(({ belief: probability, minutes: cost }) => ({ probability, cost })));
  return order.flatMap((index, at) => {
    const repair = repairs[index];
    return repair ? [{ ...repair, order: at + 1 }] : [];
  });
}
