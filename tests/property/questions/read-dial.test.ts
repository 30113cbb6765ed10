import { expect, test } from 'vitest';
import { scaleMarks } from '@/app/_ui/gauges/mark-position';
import { angleOf, pointerAngle, swingOf } from '@/app/_ui/gauges/needle';
import { markAnswer } from '@/lib/questions/mark';
import type { GeneratedQuestion } from '@/lib/questions/question';
import { fromSi, toSi } from '@/lib/units';
import { catalogue } from '../../support/bench-rig';
import { expectSoundQuestions } from '../../support/sound-questions';

test('the key is where the needle is drawn, counted mark by mark', () => {
  const gauges = new Set<string>();
  const swinging: boolean[] = [];
  expectSoundQuestions('read-dial', (question) => {
    const { gauge, scale, shown } = drawn(question);
    const key = keyOf(question);
    expect(key.value).toBeCloseTo(readOff(gauge.range, scale, angleOf(shown.value, gauge.range)), 9);
    expect(key.tolerance).toBe(scale.minor / 2);
    gauges.add(gauge.id);
    swinging.push(shown.flutter !== undefined);
    if (shown.flutter) expectMiddle(gauge.range, scale, shown, key.value);
  });
  const ruled = [...catalogue.gauges.values()].filter(({ scale }) => scale).map(({ id }) => id);
  expect([...gauges].sort()).toEqual(ruled.sort());
  expect(swinging.filter(Boolean).length).toBeGreaterThan(swinging.length / 10);
});

test('the first unit stands on the dial, and a reading converted to another one counts as well', () => {
  expectSoundQuestions(
    'read-dial',
    (question) => {
      const { gauge } = drawn(question);
      const units = question.answer.form === 'numbers' ? (question.answer.parts[0]?.units ?? []) : [];
      expect(units[0]).toBe(gauge.unit);
      const { value } = keyOf(question);
      for (const unit of units) {
        const converted = fromSi(toSi(value, gauge.unit), unit);
        const answer = { form: 'numbers' as const, parts: { reading: { value: converted, unit } } };
        expect(markAnswer(question, answer).credit).toBe(1);
      }
      expect(new Set(units).size).toBe(units.length);
    },
    200,
  );
});

function drawn({ figure }: GeneratedQuestion) {
  if (figure?.figure !== 'instrument' || figure.shown.kind !== 'value') throw new Error('No instrument is shown');
  const gauge = catalogue.gauges.get(figure.instrument);
  if (!gauge?.scale) throw new Error('No scale is shown');
  return { gauge, scale: gauge.scale, shown: figure.shown };
}

function keyOf({ key }: GeneratedQuestion) {
  const number = key.form === 'numbers' ? key.parts.reading : undefined;
  if (!number) throw new Error('No number is asked for');
  return number;
}

type Range = { min: number; max: number };
type Scale = { major: number; minor: number };

/** What somebody reads who counts the marks that lie before the needle, and a half where it stands between two. */
function readOff(range: Range, scale: Scale, needle: number): number {
  const width = angleOf(range.min + scale.minor, range) - angleOf(range.min, range);
  const before = scaleMarks(scale, range).filter(({ value }) => angleOf(value, range) <= needle + width / 8);
  const last = before[before.length - 1];
  if (!last) throw new Error('The needle stands before the scale');
  const past = (needle - angleOf(last.value, range)) / width;
  return last.value + (past > 0.25 ? scale.minor / 2 : 0);
}

function expectMiddle(
  range: Range,
  scale: Scale,
  { value, flutter }: { value: number; flutter?: number },
  key: number,
) {
  const swing = swingOf({ at: value, flutter }, range);
  if (!swing) throw new Error('The needle stands still');
  expect((readOff(range, scale, swing.from) + readOff(range, scale, swing.to)) / 2).toBeCloseTo(key, 9);
  expect((swing.from + swing.to) / 2).toBeCloseTo(pointerAngle({ at: value }, range), 9);
}
