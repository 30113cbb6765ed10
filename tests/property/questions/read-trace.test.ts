import { expect, test } from 'vitest';
import { applyCause } from '@/lib/faults/apply-cause';
import type { Line, Value } from '@/lib/questions/line';
import type { GeneratedQuestion } from '@/lib/questions/question';
import { dayOf } from '@/lib/questions/shared/rig-day';
import { rigState } from '@/lib/rig/rig-state';
import type { Setting } from '@/lib/rig/setting';
import { type TraceId, type TraceLine, valueAt } from '@/lib/rig/traces/trace';
import { fromSi, ZERO_CELSIUS } from '@/lib/units';
import { aRig, catalogue, causeOf, fuelOf } from '../../support/bench-rig';
import { expectSoundQuestions } from '../../support/sound-questions';

/** Every so many questions the traces of the wrong causes are followed afresh. */
const AFRESH = 250;

test('a trace goes wrong where it leaves that of a sound rig followed afresh, and nowhere else before', () => {
  const keys: string[] = [];
  expectSoundQuestions('read-trace', (question, seed) => {
    const { figure, answer, key } = question;
    if (figure?.figure !== 'trace' || (key.form !== 'stretch' && key.form !== 'choice')) throw new Error('No trace');
    expect(key.right).toHaveLength(1);
    const asked = asksWhere(question) ? figure.stretches.findIndex(({ id }) => id === key.right[0]) : undefined;
    expectStretches(figure.stretches);
    expectSoundBeside(question);
    if (asked !== undefined) expectWrongFirst(question, asked);
    else if (seed % AFRESH === 0) expectOnlyOneCause(question);
    if (asked === undefined) keys.push(`cause ${key.right[0]}`);
    else keys.push(asked < 0 ? 'nowhere' : `${answer.form} ${asked === 0 ? 'first' : 'later'}`);
  });
  const share = (start: string) => keys.filter((one) => one.startsWith(start)).length / keys.length;
  expect(share('nowhere')).toBeGreaterThan(0.1);
  expect(share('stretch later')).toBeGreaterThan(0.05);
  for (const place of ['a', 'b', 'c', 'd']) expect(share(`cause ${place}`)).toBeGreaterThan(0.2 * share('cause'));
});

function expectStretches(stretches: readonly { from: number; to: number }[]): void {
  stretches.forEach(({ from, to }, index) => {
    expect(from).toBeLessThan(to);
    expect(from).toBe(index === 0 ? 0 : stretches[index - 1]?.to);
  });
}

/** What stood beside the traces of a rig on its day: whatever is wrong, and however it is asked. */
const beside = new Map<string, unknown>();

/** The sound engine's points stand beside the trace, at times that do not depend on what is wrong. */
function expectSoundBeside(question: GeneratedQuestion): void {
  if (question.figure?.figure !== 'trace' || !question.figure.sound)
    throw new Error('Nothing to hold the trace against');
  const { sound, stretches, lines } = question.figure;
  const { setting, trace } = shownIn(question);
  const followed = soundLine(question.rig, setting, trace);
  const end = lines[0]?.times.at(-1) ?? 0;
  const day = JSON.stringify([question.rig, setting, trace]);
  expect(beside.get(day) ?? sound).toEqual(sound);
  beside.set(day, sound);
  const ends = stretches.length === 0 ? [end] : stretches.map(({ to }) => to);
  for (const time of ends)
    expect(
      sound.times.some((one) => Math.abs(one - time) < 1e-6),
      `${time}`,
    ).toBe(true);
  // Read off at the next point that the recorder kept.
  const step = end / 239;
  sound.times.forEach((time, index) => {
    const near = [0, 0.25, 0.5, 0.75, 1].map((share) =>
      fromSi(valueAt(followed, Math.min(end, time + share * step)), sound.unit),
    );
    const shown = sound.values[index] ?? Number.NaN;
    expect(shown).toBeGreaterThan(Math.min(...near) - 0.3);
    expect(shown).toBeLessThan(Math.max(...near) + 0.3);
  });
}

function asksWhere({ figure }: GeneratedQuestion): boolean {
  return figure?.figure === 'trace' && figure.stretches.length > 0;
}

/** Coarse: at forty times in each stretch. Two ways of rounding and sampling differ by a little. */
const SAMPLES = 40;

/** @param asked  Index of the key's stretch; −1 for nowhere. */
function expectWrongFirst(question: GeneratedQuestion, asked: number): void {
  if (question.figure?.figure !== 'trace') return;
  const { stretches } = question.figure;
  const plain = plainOf(question);
  const apart = apartFromSound(question);
  const most = stretches.map(({ from, to }) => {
    const times = Array.from({ length: SAMPLES }, (_, step) => from + ((step + 0.5) / SAMPLES) * (to - from));
    return Math.max(...times.map((time) => Math.abs(apart(time))));
  });
  const before = asked < 0 ? most : most.slice(0, asked);
  for (const one of before) expect(one).toBeLessThan(0.7 * plain);
  if (asked >= 0) expect(most[asked]).toBeGreaterThan(1.5 * plain);
}

/** How far the trace shown lies outside of what the sound one shows a little before or after. */
function apartFromSound(question: GeneratedQuestion): (time: number) => number {
  const { line, unit, slack, setting, trace } = shownIn(question);
  const sound = soundLine(question.rig, setting, trace);
  return (time) => {
    const near = [-1, -0.5, 0, 0.5, 1].map((share) => fromSi(valueAt(sound, Math.max(0, time + share * slack)), unit));
    const value = valueAt(line, time);
    return value - Math.min(Math.max(...near), Math.max(Math.min(...near), value));
  };
}

function shownIn(question: GeneratedQuestion) {
  const { figure, stem } = question;
  if (figure?.figure !== 'trace' || !figure.lines[0]) throw new Error('No trace');
  const [{ id, unit, times, values }] = figure.lines as [(typeof figure.lines)[number]];
  const check = catalogue.checks.get(idIn(stem[1], 'check'));
  const of = check?.quantities[0]?.of;
  if (of?.kind !== 'trace') throw new Error('Not a check of a trace');
  const slack = 0.01 * (times[times.length - 1] ?? 0);
  return { line: { id, times, values }, unit, slack, setting: settingOf(question), trace: of.trace };
}

const sounds = new Map<string, TraceLine>();

function soundLine(rig: string, setting: Setting, trace: TraceId): TraceLine {
  const name = JSON.stringify([rig, setting, trace]);
  const known = sounds.get(name) ?? rigState(aRig(rig), setting, fuelOf(setting)).traces.get(trace).lines[0];
  if (!known) throw new Error('A trace has a line');
  sounds.set(name, known);
  return known;
}

/** A twentieth and a little of what the sound trace ranges over, as long as the recorder can tell that. */
function plainOf(question: GeneratedQuestion): number {
  const { unit, setting, trace } = shownIn(question);
  const values = soundLine(question.rig, setting, trace).values.map((value) => fromSi(value, unit));
  const recorder: Record<TraceId, number> = { prime: 5.8, crank: 1.03, snap: 1.03, decay: 1.03, 'tank-vacuum': 0.46 };
  return Math.max(recorder[trace], 0.06 * (Math.max(...values) - Math.min(...values)));
}

/** No other cause on offer makes this trace at any of several severities; nor is a sound rig's trace taken for a broken one's. */
function expectOnlyOneCause(question: GeneratedQuestion): void {
  const { answer, key, rig } = question;
  if (answer.form !== 'choice' || key.form !== 'choice') return;
  const plain = plainOf(question);
  const { line, unit, slack, setting, trace } = shownIn(question);
  const apart = apartFromSound(question);
  const most = Math.max(...line.times.map((time) => Math.abs(apart(time))));
  const nothing = answer.options.find((option) => 'say' in option.line && option.line.say === 'nothingWrong');
  if (key.right.includes(nothing?.id ?? '')) {
    expect(most).toBeLessThan(0.7 * plain);
    return;
  }
  expect(most).toBeGreaterThan(1.5 * plain);
  for (const { id, line: words } of answer.options) {
    if (key.right.includes(id) || id === nothing?.id) continue;
    const cause = causeOf(idIn(words, 'cause'));
    for (let step = 0; step <= 4; step++) {
      const severity = cause.severity.min + (step / 4) * (cause.severity.max - cause.severity.min);
      const broken = rigState(applyCause(aRig(rig), cause, Math.min(1, severity)), setting, fuelOf(setting));
      const [other] = broken.traces.get(trace).lines;
      if (!other) throw new Error('A trace has a line');
      const differs = line.times.some((time) => {
        const near = [-1, 0, 1].map((share) => fromSi(valueAt(other, Math.max(0, time + share * slack)), unit));
        return Math.min(...near.map((one) => Math.abs(one - valueAt(line, time)))) > plain;
      });
      expect(differs, `${cause.id} at ${severity}`).toBe(true);
    }
  }
}

function idIn(line: Line | undefined, name: string): string {
  const value: Value | undefined = line && 'say' in line ? line.with?.[name] : undefined;
  if (typeof value !== 'object' || !('name' in value)) throw new Error(`No ${name}`);
  return value.id;
}

function settingOf({ stem: [day], rig }: GeneratedQuestion): Setting {
  const given = day && 'say' in day ? day.with : undefined;
  const quantity = (value: Value | undefined) =>
    typeof value === 'object' && 'quantity' in value ? value.quantity : Number.NaN;
  const number = (value: Value | undefined) =>
    typeof value === 'object' && 'number' in value ? value.number : Number.NaN;
  for (let place = 0; place < 8; place++) {
    const { setting } = dayOf(place, aRig(rig), catalogue);
    const air = Math.round(setting.airTemperature - ZERO_CELSIUS);
    if (air === quantity(given?.air) && setting.altitude === number(given?.altitude)) return setting;
  }
  throw new Error('No such day');
}
