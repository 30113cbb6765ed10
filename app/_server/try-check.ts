import type { Case } from '@/lib/cases/case';
import { gaugeFor, type HookUp } from '@/lib/cases/perform-check';
import { compareMeasured, measured } from '@/lib/checks/expected';
import { findLimit, limitBounds } from '@/lib/checks/limit';
import { type Verdict, verdictOf } from '@/lib/checks/verdict';
import { type Belief, beliefAtStart, updateBelief } from '@/lib/diagnosis/belief';
import { readingsOf } from '@/lib/diagnosis/expert-route';
import { type Particles, particlesOf } from '@/lib/diagnosis/particles';
import { byArea } from '@/lib/diagnosis/shares';
import type { ReadingAct } from '@/lib/grading/acts';
import type { AreaShares } from '@/lib/grading/grade';
import { attemptView, type ReadingView } from './attempt-view';
import { catalogue } from './catalogue';
import { decideReading } from './decide-reading';
import type { History } from './history';
import type { Skipped } from './skipped-checks';

/** What a quantity would have said. `verdict` is null where nothing was measured or the limit sheet has no line. */
export interface TriedVerdict {
  quantity: string;
  limit: string | null;
  verdict: Verdict | null;
}

/** A check made after the call, to see what it would have shown. */
export interface Trial {
  reading: ReadingView;
  verdicts: readonly TriedVerdict[];
  before: AreaShares;
  after: AreaShares;
  /** The reading in whose place it is put; null for after all of them. */
  insteadOf: number | null;
}

export type TryResult = Trial | { error: 'no-such-check' };

/** The address's way of naming a hook-up. */
export function formatHookUp({ check, condition, instrument }: HookUp): string {
  return `${check}@${condition}@${instrument}`;
}

export function parseHookUp(text: string): HookUp | undefined {
  const [check, condition, instrument, ...more] = text.split('@');
  if (!check || !condition || !instrument || more.length > 0) return undefined;
  return { check, condition, instrument };
}

/**
 * What a check would have shown on a case whose call is made, and done to the belief held at the moment it was skipped.
 *
 * @param theCase  With its truth: the attempt must be closed.
 */
export function tryCheck(theCase: Case, history: History, skipped: readonly Skipped[], text: string): TryResult {
  const hookUp = parseHookUp(text);
  if (!hookUp) return { error: 'no-such-check' };
  // A gauge that was destroyed is whole again: nothing of this counts.
  const decided = decideReading(theCase, catalogue(), [], hookUp);
  if ('error' in decided) return { error: 'no-such-check' };
  const insteadOf = skipped.find(({ step }) => formatHookUp(step) === text)?.insteadOf ?? null;
  const particles = particlesOf(theCase, catalogue());
  const before = beliefBefore(particles, history, insteadOf);
  return {
    reading: readingViewOf(history, decided.act),
    verdicts: verdictsOf(theCase, decided.act),
    before: byArea(particles, before),
    after: byArea(particles, afterReading(before, particles, decided.act)),
    insteadOf,
  };
}

function beliefBefore(particles: Particles, { acts }: History, insteadOf: number | null): Belief {
  const until = insteadOf ?? Number.POSITIVE_INFINITY;
  return acts
    .filter((act): act is ReadingAct & { seq: number } => act.kind === 'reading' && act.seq < until)
    .reduce((belief, reading) => afterReading(belief, particles, reading), beliefAtStart(particles));
}

function afterReading(belief: Belief, particles: Particles, reading: ReadingAct): Belief {
  return readingsOf(catalogue(), reading, reading.shown).reduce(
    (before, one) => updateBelief(before, particles, one),
    belief,
  );
}

/** Seen as a reading of the attempt would be, with nothing written about it. */
function readingViewOf(history: History, act: ReadingAct): ReadingView {
  const [reading] = attemptView({ ...history, acts: [{ ...act, seq: 0 }] }).readings;
  if (!reading) throw new Error('A reading has no view');
  return reading;
}

function verdictsOf({ rig }: Case, { check: checkId, condition, instrument, shown }: ReadingAct): TriedVerdict[] {
  const [check, gauge] = [catalogue().checks.get(checkId), catalogue().gauges.get(instrument)];
  return shown.map((one) => {
    const quantity = check?.quantities.find(({ id }) => id === one.quantity);
    const limit = findLimit(rig, checkId, condition, one.quantity);
    const seen = gauge && quantity && measured(one, gaugeFor(gauge, quantity));
    const verdict = seen && limit ? verdictOf(compareMeasured(seen, limitBounds(limit))) : null;
    return { quantity: one.quantity, limit: limit?.id ?? null, verdict };
  });
}
