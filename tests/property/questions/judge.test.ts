import { expect, test } from 'vitest';
import { type Said, sayer } from '@/app/_server/questions/say';
import { gaugeFor } from '@/lib/cases/perform-check';
import type { Gauge } from '@/lib/gauges/gauge';
import type { GeneratedQuestion } from '@/lib/questions/question';
import { fromSi, toSi } from '@/lib/units';
import { aRig, catalogue } from '../../support/bench-rig';
import { expectSoundQuestions } from '../../support/sound-questions';

test('the key is what ISO 14253-1 makes of the reading that is shown', () => {
  const given = new Map<string, number>();
  expectSoundQuestions('judge', (question) => {
    const { gauge, value, stopped, min, max } = facts(question);
    const guard = guardBand(gauge, value);
    expect(rightOf(question)).toBe(
      stopped ? atStop(stopped, value, { min, max }) : compared(value, guard, { min, max }),
    );
    const verdict =
      rightOf(question) === 'pass' ? 'pass' : rightOf(question).startsWith('fail') ? 'fail' : 'cannot-tell';
    given.set(verdict, (given.get(verdict) ?? 0) + 1);
    if (stopped) given.set('stopped', (given.get('stopped') ?? 0) + 1);
  });
  const total = ['pass', 'fail', 'cannot-tell'].reduce((sum, verdict) => sum + (given.get(verdict) ?? 0), 0);
  for (const verdict of ['pass', 'fail', 'cannot-tell'])
    expect(Math.abs((given.get(verdict) ?? 0) / total - 1 / 3), verdict).toBeLessThan(0.03);
  expect(given.get('stopped')).toBeGreaterThan(total / 100);
});

test('no clear reading lies so close to its limit, nor a close one so far off, that adding the errors up would decide otherwise', () => {
  expectSoundQuestions(
    'judge',
    (question) => {
      const { gauge, value, stopped, min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = facts(question);
      if (stopped) return;
      const distance = Math.min(Math.abs(value - min), Math.abs(value - max));
      if (rightOf(question) === 'tooClose') expect(distance).toBeLessThan(0.8 * guardBand(gauge, value));
      else expect(distance).toBeGreaterThan(accuracyOf(gauge, value) + readabilityOf(gauge));
    },
    1000,
  );
});

test('the figures of an explanation add up as they are printed', () => {
  const say = sayer(catalogue.questions.get('judge'), catalogue);
  let compared = 0;
  let others = 0;
  expectSoundQuestions(
    'judge',
    ({ explanation, key }) => {
      const text = explanation.map((line) => wordsOf(say(line))).join(' ');
      const [, percent, span, share] = figuresIn(text, /reading: (\S+) % of (\S+) \S+ is ± (\S+)/);
      if (percent && span && share) expectRounded(share, (at(percent) * at(span)) / 100);
      const [, accuracy, readable, u] = figuresIn(text, /√\((\S+)² \+ (\S+)²\) ÷ √3 = (\S+)/);
      const [, same, guard] = figuresIn(text, /1\.645 × (\S+) \S+ = (\S+)/);
      if (!accuracy || !readable || !u || !guard) throw new Error(`No figures in ${text}`);
      expectRounded(u, Math.sqrt((at(accuracy) ** 2 + at(readable) ** 2) / 3));
      expect(same).toBe(u);
      expectRounded(guard, 1.645 * at(u));
      const [, value, distance, side, limit, than, against] = figuresIn(
        text,
        /It shows (\S+) \S+, (\S+) \S+ (inside|outside) the limit of (\S+) \S+ That is (more|less) than (\S+)/,
      );
      if (!value || !distance || !limit) return;
      compared++;
      expect(at(distance)).toBeCloseTo(Math.abs(at(value) - at(limit)), 9);
      expect(against).toBe(guard);
      expect(than).toBe(at(distance) > at(guard) ? 'more' : 'less');
      expect(['inside', 'outside']).toContain(side);
      const [, converted] = figuresIn(text, /In the unit of the instrument \S+ \S+ is (\S+)/);
      if (converted) expect(converted).toBe(limit);
      // What speaks against the others has no figures of its own.
      const because = key.form === 'choice' ? Object.values(key.because ?? {}) : [];
      for (const line of because) {
        const [, apart, kept] = figuresIn(
          wordsOf(say(line)),
          /It lies (?:only )?(\S+) .*?(\d\S*) \S+ (?:that )?has to be/,
        );
        if (!apart || !kept) continue;
        others++;
        expect([apart, kept]).toEqual([distance, guard]);
      }
    },
    1500,
  );
  expect(compared).toBeGreaterThan(1000);
  expect(others).toBeGreaterThan(1000);
});

function wordsOf(said: Said): string {
  return ('text' in said ? said.text : said.markdown).replaceAll('\u00a0', ' ');
}

function figuresIn(text: string, pattern: RegExp): (string | undefined)[] {
  return pattern.exec(text) ?? [];
}

function at(printed: string): number {
  return Number(printed.replaceAll(',', ''));
}

/** A printed figure is what it was worked out from, rounded at its last digit. */
function expectRounded(printed: string, value: number): void {
  const step = 10 ** -(printed.split('.')[1]?.length ?? 0);
  expect(Math.abs(at(printed) - value), `${printed} for ${value}`).toBeLessThanOrEqual(0.5 * step * (1 + 1e-6));
}

/** What the question shows, in the unit of its instrument. */
function facts(question: GeneratedQuestion) {
  const { figure, stem, rig } = question;
  if (figure?.figure !== 'instrument') throw new Error('No instrument is shown');
  const { shown } = figure;
  if (shown.kind !== 'value' && shown.kind !== 'off-scale') throw new Error('No number is shown');
  const instrument = catalogue.gauges.get(figure.instrument);
  const said = stem[0] && 'say' in stem[0] ? stem[0].with : undefined;
  const [named, condition] = [said?.quantity, said?.condition] as { id: string; of?: string }[];
  const line = aRig(rig).limits.find(
    ({ check, quantity, condition: at }) => check === named?.of && quantity === named?.id && at === condition?.id,
  );
  const measured = catalogue.checks.get(named?.of ?? '')?.quantities.find(({ id }) => id === named?.id);
  if (!instrument || !line || !measured) throw new Error('The sheet has no such line');
  const inUnit = (end: number | undefined) =>
    end === undefined ? undefined : fromSi(toSi(end, line.unit), shown.unit);
  return {
    gauge: gaugeFor(instrument, measured),
    value: shown.kind === 'value' ? shown.value : shown.limit,
    stopped: shown.kind === 'off-scale' ? shown.end : undefined,
    min: inUnit(line.min),
    max: inUnit(line.max),
  };
}

function rightOf({ answer, key }: GeneratedQuestion): string {
  const right = key.form === 'choice' ? key.right[0] : undefined;
  const option = answer.form === 'choice' ? answer.options.find(({ id }) => id === right) : undefined;
  if (!option || !('say' in option.line)) throw new Error('No option is right');
  return option.line.say;
}

interface Ends {
  min: number | undefined;
  max: number | undefined;
}

/** Conforming only inside the specification less the guard band, non-conforming only outside it and the guard band. */
function compared(
  value: number,
  guard: number,
  { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY }: Ends,
) {
  if (value > min + guard && value < max - guard) return 'pass';
  if (value < min - guard) return 'failBelow';
  return value > max + guard ? 'failAbove' : 'tooClose';
}

/** The truth lies somewhere past the end of the range: settled only where all of that lies on one side. */
function atStop(end: string, value: number, { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY }: Ends) {
  if (end === 'high' && value >= max) return 'failAbove';
  if (end === 'low' && value <= min) return 'failBelow';
  const open = end === 'high' ? max === Number.POSITIVE_INFINITY : min === Number.NEGATIVE_INFINITY;
  return open ? 'pass' : 'atStop';
}

/** 1.645 u of two rectangular distributions. */
function guardBand(gauge: Gauge, value: number): number {
  return 1.645 * Math.sqrt((accuracyOf(gauge, value) ** 2 + readabilityOf(gauge) ** 2) / 3);
}

function accuracyOf({ accuracy, range }: Gauge, value: number): number {
  const span = range.max - range.min;
  if (accuracy.kind === 'absolute') return accuracy.amount;
  if (accuracy.kind === 'class') return (span * accuracy.percentOfSpan) / 100;
  const [lower, middle, upper] = accuracy.percentOfSpan;
  const fourths = (4 * (value - range.min)) / span;
  return (span * (fourths < 1 ? lower : fourths > 3 ? upper : middle)) / 100;
}

function readabilityOf({ display, resolution, scale }: Gauge): number {
  return display === 'digital' ? resolution / 2 : (scale?.minor ?? 0) / 2;
}
