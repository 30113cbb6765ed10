import { expect, test } from 'vitest';
import { decideHint, hintStands } from '@/app/_server/decide-hint';
import { hintViews } from '@/app/_server/hint-views';
import type { StoredOpenAct } from '@/app/_server/history';
import type { ReasonedHint } from '@/lib/coaching/hint';
import { aFinding, anAttempt, aReading } from '../../support/attempt-rows';
import { catalogue } from '../../support/bench-rig';
import { codeOf } from '../../support/case-codes';

const coached = anAttempt({ caseCode: codeOf('lift-pump-weak', 800), coached: true });
const hint: ReasonedHint = {
  kind: 'hint',
  next: { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' },
  why: { settles: 0.4, minutes: 12, areas: ['priming', 'supply-side'] },
};

function acts(...bodies: readonly (ReasonedHint | ReturnType<typeof aReading> | ReturnType<typeof aFinding>)[]) {
  return bodies.map((body, index): StoredOpenAct => ({ ...body, seq: index + 1 }));
}

test('a coached attempt gets a hint', () => {
  expect(decideHint({ attempt: coached, acts: [] }, catalogue)).toMatchObject({ act: { kind: 'hint' } });
});

test('an attempt that is not coached answers as one that is not there', () => {
  const attempt = { ...coached, coached: false };
  expect(decideHint({ attempt, acts: [] }, catalogue)).toEqual({ error: 'not-there' });
});

test('a hint stands until something is read, whatever is written down meanwhile', () => {
  expect(hintStands([])).toBe(false);
  expect(hintStands(acts(aReading(), hint))).toBe(true);
  expect(hintStands(acts(aReading(), hint, aFinding()))).toBe(true);
  expect(hintStands(acts(aReading(), hint, aReading()))).toBe(false);
  expect(decideHint({ attempt: coached, acts: acts(hint) }, catalogue)).toEqual({ error: 'hint-stands' });
});

test('hints are shown by name, and only the last one may stand', () => {
  const views = hintViews({ acts: acts(hint, aReading(), { kind: 'hint', next: null, why: null }) });
  expect(views).toEqual([
    {
      seq: 1,
      next: {
        check: { id: 'prime-pressure', name: 'Prime pressure' },
        condition: 'key-on',
        instrument: catalogue.gauges.get('dial-0-30-psi')?.text.en.name,
        why: hint.why,
      },
      stands: false,
    },
    { seq: 3, next: null, stands: true },
  ]);
});
