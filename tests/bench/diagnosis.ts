import type { Case } from '@/lib/cases/case';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { performCheck } from '@/lib/cases/perform-check';
import type { Catalogue } from '@/lib/catalogue';
import { type Belief, beliefAtStart, updateBelief } from '@/lib/diagnosis/belief';
import { certify } from '@/lib/diagnosis/certificate';
import { readingsOf } from '@/lib/diagnosis/expert-route';
import { nextChecks } from '@/lib/diagnosis/next-check';
import { type Particles, particlesOf } from '@/lib/diagnosis/particles';
import { canRun } from '@/lib/symptoms/complaint';
import { catalogue } from '../support/bench-rig';
import { specOf } from '../support/drawn-cases';
import { rounds, type Spread, spreadOf } from './spread';

const ROUNDS = 8;
const CASES = 12;

export interface DiagnosisSpreads {
  /** Particles, route and difficulty of one case. */
  certificate: Spread;
  certificateHardest: Spread;
  /** All quantities of one hook-up, the first time that its condition is asked for. */
  belief: Spread;
  /** Every check that is open at the start, when most is still possible. */
  next: Spread;
  growth: readonly Growth[];
}

/** How the next check costs with how much there is to weigh. */
export interface Growth {
  particles: number;
  checks: number;
  milliseconds: number;
}

export function measureDiagnosis(): DiagnosisSpreads {
  const usual = casesOf(false);
  return {
    certificate: each(usual, (theCase) => certify(theCase, catalogue)),
    certificateHardest: each(casesOf(true), (theCase) => certify(theCase, catalogue)),
    belief: measureBelief(usual),
    next: measureNext(usual),
    growth: [0.25, 0.5, 1].flatMap((share) => growthAt(share, usual)),
  };
}

function casesOf(hardest: boolean): Case[] {
  return Array.from({ length: 60 }, (_, n) => specOf('bench', n))
    .filter((spec) => (spec.hardest ?? false) === hardest)
    .map((spec) => caseFromSeed(spec, catalogue))
    .filter(({ points }) => canRun(points, 'high-idle'))
    .slice(0, CASES);
}

/** Milliseconds a case. */
function each(cases: readonly Case[], work: (theCase: Case) => void): Spread {
  return spreadOf(
    rounds(ROUNDS, () => {
      for (const theCase of cases) work(theCase);
    }).map((time) => time / cases.length),
  );
}

function measureBelief(cases: readonly Case[]): Spread {
  const times = Array.from({ length: ROUNDS }, () => {
    const readied = cases.map((theCase) => ready(theCase, particlesOf(theCase, catalogue)));
    const start = performance.now();
    for (const { particles, readings } of readied)
      readings.reduce((belief: Belief, reading) => updateBelief(belief, particles, reading), beliefAtStart(particles));
    return (performance.now() - start) / readied.length;
  });
  return spreadOf(times);
}

function ready(theCase: Case, particles: Particles) {
  // No code or complaint looks at high idle, so that it has not been solved before.
  const hookUp = {
    check: 'main-filter-drop',
    condition: 'high-idle',
    instrument: 'differential-digital-0-1500-kpa',
  } as const;
  const read = performCheck(theCase, catalogue, hookUp);
  if ('error' in read) throw new Error(read.error);
  return { particles, readings: readingsOf(catalogue, hookUp, read.shown) };
}

function measureNext(cases: readonly Case[], within: Catalogue = catalogue): Spread {
  const readied = cases.map((theCase) => particlesOf(theCase, within));
  for (const particles of readied) nextChecks(particles, beliefAtStart(particles), new Set());
  const times = rounds(ROUNDS, () => {
    for (const particles of readied) nextChecks(particles, beliefAtStart(particles), new Set());
  });
  return spreadOf(times.map((time) => time / readied.length));
}

/** With that share of the causes, and then with that share of the checks as well. */
function growthAt(share: number, cases: readonly Case[]): Growth[] {
  const first = <T>(items: ReadonlyMap<string, T>) =>
    new Map([...items].filter((_, index) => Math.floor((index + 1) * share) > Math.floor(index * share)));
  const fewerCauses = { ...catalogue, causes: first(catalogue.causes) };
  const both = { ...fewerCauses, checks: first(catalogue.checks) };
  return (share === 1 ? [catalogue] : [fewerCauses, both]).map((within) => {
    const particles = cases.map((theCase) => particlesOf(theCase, within));
    const mean = (of: (one: Particles) => number) =>
      Math.round(particles.reduce((sum, one) => sum + of(one), 0) / particles.length);
    return {
      particles: mean(({ count }) => count),
      checks: mean(({ candidates }) => candidates.length),
      milliseconds: measureNext(cases, within).min,
    };
  });
}
