import { expect, test } from 'vitest';
import { areas } from '@/lib/areas';
import { beliefAtStart } from '@/lib/diagnosis/belief';
import { certify } from '@/lib/diagnosis/certificate';
import { nextChecks } from '@/lib/diagnosis/next-check';
import { byArea } from '@/lib/diagnosis/shares';
import { judgeSteps } from '@/lib/grading/judge-steps';
import { catalogue } from '../../support/bench-rig';
import { markingOf } from '../../support/marking';
import { aCase, taken } from '../../support/worked-attempt';

const weakPump = aCase({ cause: 'lift-pump-weak' });
const marking = markingOf(weakPump);
const { particles } = marking;
const { route } = certify(weakPump, catalogue, particles);
const hookUps = route.steps.map(({ check, condition, instrument }) => ({ check, condition, instrument }));
const prime = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' } as const;

function judged(wanted: readonly Parameters<typeof taken>[2][]) {
  return judgeSteps(
    marking,
    wanted.map((hookUp, index) => taken(weakPump, index + 1, hookUp)),
  );
}

test('the expert’s own route is well spent to the last minute', () => {
  const steps = judged(hookUps);
  expect(steps.map(({ grade }) => grade.credit)).toEqual(hookUps.map(() => 1));
  expect(steps.map(({ sooner }) => sooner)).toEqual(hookUps.map(() => undefined));
});

test('belief goes the way it goes on the expert’s route', () => {
  judged(hookUps).forEach(({ grade }, index) => {
    for (const area of areas) expect(grade.areas[area]).toBeCloseTo(route.steps[index]?.areas[area] ?? -1, 12);
  });
});

test('a reading is judged by what was known before it, not by what it turned out to say', () => {
  const [first] = judged([prime]);
  const worths = nextChecks(particles, beliefAtStart(particles), new Set());
  const worth = worths.find(({ check, condition }) => check === prime.check && condition === prime.condition);
  expect(first?.grade).toMatchObject({
    seq: 1,
    minutes: 12,
    gain: worth?.gain,
    perMinute: worth?.perMinute,
    best: { check: worths[0]?.check, condition: worths[0]?.condition, perMinute: worths[0]?.perMinute },
  });
  expect(first?.grade.areas).not.toEqual(byArea(particles, beliefAtStart(particles)));
});

test('the same hook-up again is worth nothing; another instrument on the port may be', () => {
  const [, again] = judged([prime, prime]);
  expect(again).toMatchObject({ code: 'step-repeated', grade: { credit: 0 } });
  const [, finer] = judged([prime, { ...prime, instrument: 'dial-0-200-kpa' }]);
  expect(finer?.code).not.toBe('step-repeated');
});

test('once the repair is settled, measuring the part counts once and nothing else does', () => {
  const bus = { check: 'cranking-rail-pressure', condition: 'cranking', instrument: 'data-display' } as const;
  const steps = judged([...hookUps, bus]);
  expect(steps.at(-1)).toMatchObject({ code: 'step-settled', grade: { credit: 0 } });
});

test('a lost gauge teaches nothing and its minutes do not count', () => {
  const [lost] = judged([{ ...prime, condition: 'idle' }]);
  expect(lost).toMatchObject({ code: 'step-lost', grade: { credit: 0 } });
  expect(lost?.grade.areas).toEqual(byArea(particles, beliefAtStart(particles)));
});
