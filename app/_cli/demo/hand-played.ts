import type { Area } from '@/lib/areas';
import { type ChosenCause, seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import type { Catalogue } from '@/lib/catalogue';
import type { CallAct, StoredAct } from '@/lib/grading/acts';
import { knownOf } from '@/lib/grading/grade-attempt';
import type { ConditionId } from '@/lib/rig/condition';
import type { Job } from '../policies/job';
import { Notebook } from '../policies/notebook';

/** What is done at one port. Without areas, the reading stays unjudged. */
interface Look {
  check: string;
  condition: ConditionId;
  instrument: string;
  areas?: { clears: readonly Area[]; suspects: readonly Area[] };
}

interface HandPlayed {
  name: string;
  chosen: ChosenCause;
  checks: readonly Look[];
  /** Without it, the attempt stays open. */
  call?: CallAct;
}

/** The system that all of them are on. */
const RIG = 'tern-13';

const attempts: readonly HandPlayed[] = [
  {
    name: 'hand-played-finished',
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
      kind: 'call',
      cause: 'lift-pump-weak',
      repair: 'replace-lift-pump',
      proof: { check: 'prime-pressure', condition: 'key-on' },
      restored: ['take-gauge-off', 'close-fitting', 'prime', 'look-for-leaks'],
    },
  },
  {
    name: 'hand-played-gauge-lost',
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
      kind: 'call',
      cause: 'main-filter-plugged',
      repair: 'replace-main-filter',
      proof: { check: 'main-filter-drop', condition: 'full-load' },
      restored: ['take-gauge-off', 'reuse-seals'],
    },
  },
  {
    name: 'hand-played-open',
    chosen: { cause: 'main-filter-plugged', severity: 700 },
    checks: [{ check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' }],
  },
];

/** Attempts thought out one by one: brought to a good end, spoiled by a gauge, and under way. */
export function* handPlayed(catalogue: Catalogue): Generator<{ name: string; job: Job; acts: StoredAct[] }> {
  for (const { name, chosen, checks, call } of attempts) {
    const theCase = caseFromSeed({ rig: RIG, seed: seedFromWord(name), chosen }, catalogue);
    const job = { theCase, catalogue, ...knownOf(theCase, catalogue) };
    yield { name, job, acts: play(job, checks, call) };
  }
}

function play(job: Job, checks: readonly Look[], call: CallAct | undefined): StoredAct[] {
  const notebook = new Notebook(job);
  for (const { areas, ...hookUp } of checks) {
    const reading = notebook.read(hookUp);
    if (areas) notebook.judge(reading, (right) => ({ ...right, ...areas }));
  }
  return call ? notebook.call(call) : notebook.acts;
}
