import { createTranslator } from 'next-intl';
import { expect, test } from 'vitest';
import messages from '@/content/messages/en.json';
import type { Shown } from '@/lib/checks/shown';
import type { StoredAct } from '@/lib/grading/acts';
import { gradeAttempt } from '@/lib/grading/grade-attempt';
import { noteCodes } from '@/lib/grading/note-codes';
import { aReading } from '../../support/attempt-rows';
import { catalogue } from '../../support/bench-rig';
import { aCase, judged, rightCall, taken } from '../../support/worked-attempt';

const weakPump = aCase({ cause: 'lift-pump-weak' });
const prime = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' } as const;
const jet: Shown[] = [{ kind: 'jet', quantity: 'fuel-at-fitting', speed: 300, pressure: 40e6 }];

/** A long day with most of what can go wrong in it. */
function manyLapses(): StoredAct[] {
  const first = taken(weakPump, 1, prime);
  const close = { ...taken(weakPump, 4, prime), shown: [{ ...psi(10.25) }] };
  const trace = taken(weakPump, 6, { check: 'crank-trace', condition: 'cranking', instrument: 'trace-recorder' });
  const misread = { entered: { value: 25, unit: 'psi' as const }, verdict: 'pass' as const };
  return [
    first,
    judged(weakPump, 2, first, { suspects: ['priming', 'returns'], limit: null, entered: { value: 3, unit: 'psi' } }),
    judged(weakPump, 3, first, { ...misread, comparison: 'too-close' }),
    close,
    judged(weakPump, 5, close),
    trace,
    { ...first, seq: 7, condition: 'cranking' },
    { ...first, seq: 8, condition: 'idle', shown: [{ kind: 'destroyed', quantity: 'prime-pressure' }] },
    { ...aReading({ check: 'high-pressure-fitting', condition: 'idle', instrument: 'eyes', shown: jet }), seq: 9 },
    rightCall(weakPump, 10, { repair: 'replace-gear-pump', restored: ['bleed-high-pressure'] }),
  ];
}

function psi(value: number): Shown {
  return { kind: 'value', quantity: 'prime-pressure', value, unit: 'psi' };
}

const first = taken(weakPump, 1, prime);
const attempts: StoredAct[][] = [
  manyLapses(),
  [first, judged(weakPump, 2, first, { suspects: ['priming'] }), rightCall(weakPump, 3)],
  [rightCall(weakPump, 1, { cause: 'gear-pump-worn' })],
  [first, rightCall(weakPump, 2, { cause: 'rail-sensor-reads-high' })],
];

test('every note that a grade gives makes a sentence of its numbers', () => {
  const t = createTranslator({
    locale: 'en',
    messages,
    namespace: 'debrief.notes',
    onError: (error) => {
      throw error;
    },
  });
  const notes = attempts.flatMap((acts) => gradeAttempt(weakPump, catalogue, acts).notes);
  for (const { code, values } of notes) {
    const known = noteCodes.find((one) => one === code);
    if (!known) throw new Error(`No code ${code}`);
    // Where it stands in the debrief, the reading is named beside the number.
    const sentence = t(known, { ...values, ...('seq' in values && { reading: 'Prime pressure, key on' }) } as never);
    expect(sentence).toMatch(/^[^{}]+\.$/);
  }
  const told = new Set(notes.map(({ code }) => code));
  expect(told.size).toBeGreaterThan(noteCodes.length / 2);
});
