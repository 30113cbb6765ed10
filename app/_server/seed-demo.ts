import type { Area } from '@/lib/areas';
import { seedFromWord } from '@/lib/cases/case-code';
import type { HookUp } from '@/lib/cases/perform-check';
import { compareMeasured, measured } from '@/lib/checks/expected';
import { findLimit, limitBounds } from '@/lib/checks/limit';
import { verdictOf } from '@/lib/checks/verdict';
import type { FindingAct, ReadingAct } from '@/lib/grading/acts';
import { catalogue } from './catalogue';
import { type CallChoice, decideCall } from './decide-call';
import { decideFinding, isReadByEye } from './decide-finding';
import { decideReading } from './decide-reading';
import { caseOf, type History } from './history';
import { makeCall } from './make-call';
import { startAttempt } from './start-attempt';
import { takeAct } from './take-act';

/** What the invented learner does at one port. Without areas, the reading stays unjudged. */
interface DemoCheck extends HookUp {
  areas?: { clears: readonly Area[]; suspects: readonly Area[] };
}

interface DemoAttempt {
  name: string;
  chosen: { cause: string; severity: number };
  checks: readonly DemoCheck[];
  call?: CallChoice;
}

/** The system that the invented learner works on. */
const RIG = 'tern-13';

const demos: readonly DemoAttempt[] = [
  {
    name: 'demo-finished',
    chosen: { cause: 'lift-pump-weak', severity: 800 },
    checks: [
      {
        check: 'rail-pressure',
        condition: 'idle',
        instrument: 'data-display',
        areas: { clears: ['metering-control', 'high-pressure'], suspects: ['priming', 'supply-side'] },
      },
      {
        check: 'prime-pressure',
        condition: 'key-on',
        instrument: 'dial-0-30-psi',
        areas: { clears: [], suspects: ['priming', 'supply-side'] },
      },
      {
        check: 'air-in-fuel',
        condition: 'key-on',
        instrument: 'clear-hose',
        areas: { clears: ['supply-side'], suspects: ['priming'] },
      },
    ],
    call: {
      cause: 'lift-pump-weak',
      repair: 'replace-lift-pump',
      check: 'prime-pressure',
      condition: 'key-on',
      restored: ['take-gauge-off', 'close-fitting', 'prime', 'look-for-leaks'],
    },
  },
  {
    name: 'demo-gauge-lost',
    chosen: { cause: 'inlet-screen-plugged', severity: 850 },
    checks: [
      { check: 'gear-pump-pressure', condition: 'idle', instrument: 'dial-0-30-psi' },
      {
        check: 'gear-pump-pressure',
        condition: 'idle',
        instrument: 'dial-0-300-psi',
        areas: { clears: ['low-pressure-supply', 'priming'], suspects: ['filtration', 'high-pressure'] },
      },
    ],
    call: {
      cause: 'main-filter-plugged',
      repair: 'replace-main-filter',
      check: 'main-filter-drop',
      condition: 'full-load',
      restored: ['take-gauge-off', 'reuse-seals'],
    },
  },
  {
    name: 'demo-open',
    chosen: { cause: 'main-filter-plugged', severity: 700 },
    checks: [{ check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' }],
  },
];

/** Fills the one learner's desk with invented attempts, through the same doors that a learner's acts come in by. */
export async function seedDemo(learnerId: string): Promise<number> {
  for (const demo of demos) await playDemo(learnerId, demo);
  return demos.length;
}

async function playDemo(learnerId: string, { name, chosen, checks, call }: DemoAttempt): Promise<void> {
  const attempt = await startAttempt(learnerId, name, { rig: RIG, seed: seedFromWord(name), chosen }, true);
  for (const [index, { areas, ...hookUp }] of checks.entries()) {
    const key = `${name}-${index}`;
    const { seq } = done(
      await takeAct({
        learnerId,
        attemptId: attempt.id,
        key,
        decide: ({ attempt: own, acts }) => decideReading(caseOf(own), catalogue(), acts, hookUp),
      }),
    );
    if (!areas) continue;
    done(
      await takeAct({
        learnerId,
        attemptId: attempt.id,
        key: `${key}-finding`,
        decide: (history) => decideFinding(caseOf(attempt).rig, catalogue(), history.acts, judge(history, seq, areas)),
      }),
    );
  }
  if (!call) return;
  const { act } = done(decideCall(caseOf(attempt).rig, catalogue(), call));
  done(await makeCall(learnerId, attempt.id, `${name}-call`, act));
}

/** What a careful learner would write about the first quantity of a reading. */
function judge({ attempt, acts }: History, seq: number, areas: NonNullable<DemoCheck['areas']>): FindingAct {
  const reading = acts.find((act): act is ReadingAct & { seq: number } => act.seq === seq && act.kind === 'reading');
  const shown = reading?.shown[0];
  const gauge = reading && catalogue().gauges.get(reading.instrument);
  const seen = shown && gauge && measured(shown, gauge);
  if (!reading || !shown || !seen) throw new Error(`Demo reading ${seq} shows nothing to judge`);
  const limit = findLimit(caseOf(attempt).rig, reading.check, reading.condition, shown.quantity);
  const comparison = limit ? compareMeasured(seen, limitBounds(limit)) : 'too-close';
  const entered = shown.kind === 'value' && isReadByEye(gauge, shown) ? { value: shown.value, unit: shown.unit } : null;
  return {
    kind: 'finding',
    reading: seq,
    quantity: shown.quantity,
    entered,
    verdict: verdictOf(comparison),
    comparison,
    limit: limit?.id ?? null,
    ...areas,
    words: '',
  };
}

function done<T extends object>(result: T): Exclude<T, { error: string }> {
  if ('error' in result) throw new Error(`The demo does not play: ${String(result.error)}`);
  return result as Exclude<T, { error: string }>;
}
