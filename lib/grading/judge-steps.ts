import { type Belief, beliefAtStart, updateBelief } from '../diagnosis/belief';
import { readingsOf } from '../diagnosis/expert-route';
import { type CheckWorth, hookUpKey, NOTHING_TOLD, nextChecks, type RouteStep } from '../diagnosis/next-check';
import { byArea, byCause, byRepair } from '../diagnosis/shares';
import type { ReadingAct } from './acts';
import type { StepGrade } from './grade';
import type { Marking, Numbered } from './marking';
import { creditOf, type Moment, type StepCode, soonerThan } from './step-credit';

export interface JudgedStep {
  grade: StepGrade;
  code: StepCode;
  /** A short check that should have come first. */
  sooner: RouteStep | undefined;
}

/** Every reading with its worth at the moment it was taken: by the belief that all earlier readings had led to. */
export function judgeSteps(marking: Marking, readings: readonly Numbered<ReadingAct>[]): JudgedStep[] {
  let belief = beliefAtStart(marking.particles);
  return readings.map((reading, index) => {
    const moment = momentOf(marking, belief, reading, readings.slice(0, index));
    belief = afterReading(marking, belief, reading);
    return judged(marking, reading, moment, belief);
  });
}

function afterReading({ particles, catalogue }: Marking, belief: Belief, reading: ReadingAct): Belief {
  const measured = readingsOf(catalogue, reading, reading.shown);
  return measured.reduce((before, one) => updateBelief(before, particles, one), belief);
}

function momentOf(marking: Marking, belief: Belief, reading: ReadingAct, earlier: readonly ReadingAct[]): Moment {
  const { particles, rubric } = marking;
  const key = keyOf(reading);
  const made = new Set(earlier.map(keyOf));
  const repeated = earlier.some((one) => keyOf(one) === key && one.instrument === reading.instrument);
  // Another instrument on the same port may still tell something.
  const done = repeated ? made : new Set([...made].filter((other) => other !== key));
  const open = nextChecks(particles, belief, done).filter(({ gain }) => gain >= NOTHING_TOLD);
  const settled = Math.max(...byRepair(particles, belief).values()) >= rubric.route.settledFrom;
  return {
    open,
    worth: open.find((worth) => keyOf(worth) === key),
    repeated,
    over: settled || open.length === 0,
    proves: proofsOf(marking, belief).some((keys) => keys.includes(key) && !keys.some((proof) => made.has(proof))),
  };
}

/** Belief in a cause from which it is taken to be at work. */
const BELIEVED = 0.5;

/** For each cause that is believed, the hook-ups that measure it. */
function proofsOf({ particles, catalogue: { causes } }: Marking, belief: Belief): string[][] {
  const believed = [...byCause(particles, belief)].filter(([, share]) => share >= BELIEVED);
  return believed.map(([cause]) => (causes.get(cause)?.provenBy ?? []).map(keyOf));
}

function keyOf({ check, condition }: Pick<ReadingAct, 'check' | 'condition'>): string {
  return hookUpKey(check, condition);
}

function judged(marking: Marking, reading: Numbered<ReadingAct>, moment: Moment, after: Belief): JudgedStep {
  const { seq, check, condition, instrument } = reading;
  const [best] = moment.open;
  const { code, credit } = creditOf(marking, reading, moment);
  const grade: StepGrade = {
    seq,
    check,
    condition,
    instrument,
    minutes: marking.catalogue.checks.get(check)?.minutes ?? 0,
    gain: moment.worth?.gain ?? 0,
    perMinute: moment.worth?.perMinute ?? 0,
    best: best ? bestOf(best) : null,
    credit,
    areas: byArea(marking.particles, after),
  };
  return { grade, code, sooner: soonerThan(marking, reading, moment) };
}

function bestOf({ check, condition, instrument, minutes, perMinute }: CheckWorth): StepGrade['best'] {
  return { check, condition, instrument, minutes, perMinute };
}
