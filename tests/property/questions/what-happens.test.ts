import { expect, test } from 'vitest';
import { drawSetting } from '@/lib/cases/case-from-seed';
import { trueValue } from '@/lib/checks/quantity';
import { applyCause } from '@/lib/faults/apply-cause';
import type { Gauge } from '@/lib/gauges/gauge';
import type { Line, Value } from '@/lib/questions/line';
import type { GeneratedQuestion } from '@/lib/questions/question';
import type { ConditionId } from '@/lib/rig/condition';
import { type RigState, rigState } from '@/lib/rig/rig-state';
import type { Setting } from '@/lib/rig/setting';
import { canRun } from '@/lib/symptoms/complaint';
import { topicsOf } from '@/lib/topics/topics-of';
import { fromSi } from '@/lib/units';
import { aRig, catalogue, causeOf, fuelOf } from '../../support/bench-rig';
import { expectSoundQuestions } from '../../support/sound-questions';

/** Every so many questions both rigs are solved afresh. */
const AFRESH = 50;

test('readings rise, fall and stay as two rigs solved afresh say, by what the instrument’s class allows', () => {
  const asked = { rises: 0, falls: 0, stays: 0 };
  const places: string[] = [];
  expectSoundQuestions('what-happens', (question, seed) => {
    expect(topicsOf(causeOf(faultOf(question)), catalogue).map(({ id }) => id)).toEqual(question.topics);
    const { key } = question;
    if (key.form === 'choice') places.push(...key.right);
    const shown = patternOf(question);
    expect(shown.some(({ direction }) => direction !== 'stays')).toBe(true);
    for (const { direction } of shown) asked[direction as keyof typeof asked] += 1;
    if (seed % AFRESH === 0) expectAfresh(question);
  });
  const all = asked.rises + asked.falls + asked.stays;
  for (const count of Object.values(asked)) expect(count / all).toBeGreaterThan(0.1);
  for (const place of ['a', 'b', 'c', 'd'])
    expect(places.filter((one) => one === place).length / places.length).toBeGreaterThan(0.2);
});

interface Shown {
  check: string;
  quantity: string;
  condition: ConditionId;
  direction: string;
}

function valuesOf(line: Line | undefined): Readonly<Record<string, Value>> {
  if (!line || !('say' in line)) throw new Error('No values');
  return line.with ?? {};
}

function idIn(line: Line | undefined, name: string): { id: string; of: string } {
  const value = valuesOf(line)[name];
  if (typeof value !== 'object' || !('name' in value)) throw new Error(`No ${name}`);
  return { id: value.id, of: value.of ?? '' };
}

function numberIn(line: Line, name: string): number {
  const value = valuesOf(line)[name];
  if (typeof value !== 'object' || !('quantity' in value)) throw new Error(`No ${name}`);
  return value.quantity;
}

function faultOf({ explanation }: GeneratedQuestion): string {
  return idIn(explanation[0], 'cause').id;
}

/** What is asked, or shown, with its directions. */
function patternOf({ answer, key, figure }: GeneratedQuestion): Shown[] {
  if (answer.form === 'grid' && key.form === 'grid')
    return answer.rows.map(({ id, line }) => shownBy(line, key.cells[id] ?? ''));
  if (figure?.figure !== 'table') throw new Error('Neither asked nor shown');
  return figure.rows.map(([look, change]) => shownBy(look as Line, String(valuesOf(change).direction)));
}

function shownBy(look: Line, direction: string): Shown {
  const { id: quantity, of: check } = idIn(look, 'quantity');
  return { check, quantity, condition: idIn(look, 'condition').id as ConditionId, direction };
}

function expectAfresh(question: GeneratedQuestion): void {
  const rig = aRig(question.rig);
  const setting = settingOf(question);
  const [sound, cause] = [rigState(rig, setting, fuelOf(setting)), causeOf(faultOf(question))];
  const shown = patternOf(question);
  const afters = question.explanation.filter((line) => 'say' in line && line.say === 'change');
  const { min, max } = cause.severity;
  const likely = [0.4, 0.6, 0.8, 1].filter((severity) => severity >= min && severity <= max);
  const states = (likely.length > 0 ? likely : [max]).map((severity) => stateAt(question, cause.id, severity, setting));
  const fits = states.some((broken) =>
    shown.every((one, index) => {
      const told = directionAt(sound, broken, one);
      return (
        told?.direction === one.direction && near(told.after, numberIn(afters[index] as Line, 'after'), told.width)
      );
    }),
  );
  expect(fits).toBe(true);
  if (question.answer.form === 'choice') expectOthersOut(question, sound, shown, setting);
}

/** No other option makes the pattern at any of many severities. */
function expectOthersOut(question: GeneratedQuestion, sound: RigState, shown: readonly Shown[], setting: Setting) {
  const { answer, key } = question;
  if (answer.form !== 'choice' || key.form !== 'choice') return;
  for (const { id, line } of answer.options) {
    if (key.right.includes(id)) continue;
    const { severity, id: cause } = causeOf(idIn(line, 'cause').id);
    for (let step = 0; step <= 4; step++) {
      const broken = stateAt(question, cause, severity.min + (step / 4) * (severity.max - severity.min), setting);
      const out = shown.some((one) => {
        if (!canRun(broken.points, one.condition)) return true;
        const told = directionAt(sound, broken, one);
        return told?.direction !== undefined && told.direction !== one.direction;
      });
      expect(out, `${cause} at step ${step}`).toBe(true);
    }
  }
}

function settingOf({ stem, rig }: GeneratedQuestion): Setting {
  const [air, altitude, fuel] = [
    numberIn(stem[0] as Line, 'air'),
    valuesOf(stem[0]).altitude,
    idIn(stem[0], 'fuel').id,
  ];
  for (let day = 0; day < 8; day++) {
    const setting = drawSetting(aRig(rig), `day ${day}`, catalogue);
    const same = typeof altitude === 'object' && 'number' in altitude && altitude.number === setting.altitude;
    if (same && setting.fuel === fuel && Math.abs(fromSi(setting.airTemperature, '°C') - air) < 0.5) return setting;
  }
  throw new Error('No day like this');
}

function stateAt({ rig }: GeneratedQuestion, cause: string, severity: number, setting: Setting): RigState {
  return rigState(applyCause(aRig(rig), causeOf(cause), Math.min(1, severity)), setting, fuelOf(setting));
}

/** By the first instrument of the procedure that shows both readings; undefined where none does. */
function directionAt(sound: RigState, broken: RigState, { check: id, quantity: of, condition }: Shown) {
  const check = catalogue.checks.get(id);
  const quantity = check?.quantities.find((one) => one.id === of);
  if (!check || !quantity || !canRun(broken.points, condition)) return undefined;
  for (const instrument of check.instruments) {
    const gauge = catalogue.gauges.get(instrument);
    const scale = gauge && { ...gauge, ...gauge.alsoReads?.find(({ unit }) => unit === quantity.unit) };
    if (!scale) continue;
    const unit = quantity.unit ?? scale.unit;
    const [before, after] = [sound, broken].map((state) => fromSi(trueValue(state, condition, quantity, 0), unit)) as [
      number,
      number,
    ];
    if (Math.min(before, after) < scale.range.min || Math.max(before, after) > scale.range.max) continue;
    const width = Math.hypot(doubt(scale, before), doubt(scale, after));
    return { direction: judged(after - before, width, Math.max(Math.abs(before), Math.abs(after))), after, width };
  }
  return undefined;
}

/** Standard uncertainty of one reading from the instrument's accuracy and its smallest step, both as rectangles. */
function doubt(
  { accuracy, range, resolution, display }: Pick<Gauge, 'accuracy' | 'range' | 'resolution' | 'display'>,
  at: number,
) {
  const span = range.max - range.min;
  const quarter = Math.min(3, Math.floor((4 * (at - range.min)) / span));
  const percent =
    accuracy.kind === 'class'
      ? accuracy.percentOfSpan
      : accuracy.kind === 'quarters'
        ? accuracy.percentOfSpan[[0, 1, 1, 2][quarter] ?? 2]
        : 0;
  const limit = accuracy.kind === 'absolute' ? accuracy.amount : ((percent ?? 0) / 100) * span;
  const step = display === 'digital' ? resolution / 2 : display === 'eye' ? 0 : resolution;
  return Math.sqrt((limit * limit + step * step) / 3);
}

/** A little to either side of the generator's bounds is left open, as two ways of solving differ in their last digits. */
function judged(difference: number, width: number, size: number): string | undefined {
  if (Math.abs(difference) > 0.97 * Math.max(2.5 * width, 0.03 * size)) return difference > 0 ? 'rises' : 'falls';
  return Math.abs(difference) <= 0.55 * width ? 'stays' : undefined;
}

/** What is too small to be shown is printed as nothing. */
function near(one: number, other: number, width: number): boolean {
  if (other === 0) return Math.abs(one) < width;
  return Math.abs(one - other) <= 0.1 * width + 0.005 * Math.abs(one);
}
