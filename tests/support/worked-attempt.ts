import type { Case } from '@/lib/cases/case';
import { seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { gaugeFor, type HookUp, performCheck } from '@/lib/cases/perform-check';
import { compareMeasured, measured } from '@/lib/checks/expected';
import { findLimit, limitBounds } from '@/lib/checks/limit';
import { verdictOf } from '@/lib/checks/verdict';
import { appliesTo } from '@/lib/faults/apply-cause';
import type { CallAct, FindingAct, ReadingAct, StoredAct } from '@/lib/grading/acts';
import type { ConditionId } from '@/lib/rig/condition';
import { complaintOf } from '@/lib/symptoms/complaint';
import { catalogue, causeOf } from './bench-rig';

type Numbered<T> = T & { seq: number };

/** A case whose cause is chosen; everything else follows from the word. */
export function aCase({ cause = 'lift-pump-weak', severity = 0.8, word = 'alder-17', rig = 'tern-13' } = {}): Case {
  const drawn = causeOf(cause).effects.length === 0 ? 0 : severity;
  const chosen = { cause, severity: Math.round(drawn * 1000) };
  return caseFromSeed({ rig, seed: seedFromWord(word), chosen }, catalogue);
}

/** A case of a cause at its worst, on a rig that can have it and in weather in which a driver notices. */
export function aNoticedCase(cause: string): Case {
  const { effects, severity } = causeOf(cause);
  const rigs = [...catalogue.rigs.values()].filter((rig) => appliesTo(rig, causeOf(cause)));
  for (let n = 0; n < 60; n++) {
    const rig = rigs[n % rigs.length]?.id ?? '';
    const theCase = aCase({ cause, severity: severity.max, word: `oak-${n}`, rig });
    if (effects.length === 0 || complaintOf(theCase.rig, theCase.points, theCase.workOrder.codes)) return theCase;
  }
  throw new Error(`Nobody notices ${cause}`);
}

/** A reading as it would be stored. Throws when the hook-up is refused. */
export function taken(theCase: Case, seq: number, hookUp: HookUp & { condition: ConditionId }): Numbered<ReadingAct> {
  const read = performCheck(theCase, catalogue, hookUp);
  if ('error' in read) throw new Error(`${hookUp.check} at ${hookUp.condition}: ${read.error}`);
  return { seq, kind: 'reading', ...hookUp, shown: read.shown };
}

/** What somebody who reads the dial right and knows the limit sheet writes down, naming no areas. */
export function judged(
  { rig }: Case,
  seq: number,
  reading: Numbered<ReadingAct>,
  changes: Partial<FindingAct> = {},
): Numbered<FindingAct> {
  const check = catalogue.checks.get(reading.check);
  const instrument = catalogue.gauges.get(reading.instrument);
  const quantity = check?.quantities.find(({ id }) => id === (changes.quantity ?? reading.shown[0]?.quantity));
  const shown = reading.shown.find((item) => item.quantity === quantity?.id);
  if (!instrument || !quantity || !shown) throw new Error(`Reading ${reading.seq} shows nothing to judge`);
  const seen = measured(shown, gaugeFor(instrument, quantity));
  const limit = findLimit(rig, reading.check, reading.condition, quantity.id);
  const comparison = seen && limit ? compareMeasured(seen, limitBounds(limit)) : 'too-close';
  return {
    seq,
    kind: 'finding',
    reading: reading.seq,
    quantity: quantity.id,
    entered: instrument.scale && shown.kind === 'value' ? { value: shown.value, unit: shown.unit } : null,
    verdict: verdictOf(comparison),
    comparison,
    limit: limit?.id ?? null,
    clears: [],
    suspects: [],
    words: '',
    ...changes,
  };
}

/** The right call, proved by the first check that content names for the cause. */
export function rightCall({ truth }: Case, seq: number, changes: Partial<CallAct> = {}): Numbered<CallAct> {
  const { repairs, provenBy } = causeOf(truth.cause);
  const [repair, proof] = [repairs[0], provenBy[0]];
  if (!repair || !proof) throw new Error(`No repair or proof for ${truth.cause}`);
  return { seq, kind: 'call', cause: truth.cause, repair: repair.id, proof, ...changes };
}

const ROUND: readonly (HookUp & { condition: ConditionId })[] = [
  { check: 'trouble-codes', condition: 'key-on', instrument: 'code-list' },
  { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' },
  { check: 'gear-pump-pressure', condition: 'cranking', instrument: 'digital-0-4-mpa' },
  { check: 'cranking-rail-pressure', condition: 'cranking', instrument: 'data-display' },
  { check: 'relief-valve-leak', condition: 'cranking', instrument: 'cylinder-50-ml' },
  { check: 'pump-return-flow', condition: 'cranking', instrument: 'cylinder-50-ml' },
];

/** Six checks that any rig allows, running or not, each with a finding, and the right call. */
export function aWorkedAttempt(theCase: Case): StoredAct[] {
  const acts = ROUND.flatMap((hookUp, index) => {
    const reading = taken(theCase, 2 * index + 1, hookUp);
    return [reading, judged(theCase, 2 * index + 2, reading, { suspects: ['high-pressure'] })];
  });
  return [...acts, rightCall(theCase, acts.length + 1)];
}
