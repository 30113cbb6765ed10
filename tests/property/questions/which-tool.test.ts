import { expect, test } from 'vitest';
import { drawSetting } from '@/lib/cases/case-from-seed';
import { gaugeFor } from '@/lib/cases/perform-check';
import type { Check, Quantity } from '@/lib/checks/check';
import { trueValue } from '@/lib/checks/quantity';
import type { Gauge } from '@/lib/gauges/gauge';
import type { Line, Value } from '@/lib/questions/line';
import type { GeneratedQuestion } from '@/lib/questions/question';
import type { ConditionId, SteadyConditionId } from '@/lib/rig/condition';
import type { LimitLine } from '@/lib/rig/rig';
import type { RigState } from '@/lib/rig/rig-state';
import { fromSi, toSi } from '@/lib/units';
import { aRig, catalogue, stateOf } from '../../support/bench-rig';
import { expectSoundQuestions } from '../../support/sound-questions';

/** The solver's own states of every rig on the days that content lets it be set on. */
const states = new Map(
  [...catalogue.rigs.values()].map((rig) => [
    rig.id,
    [0, 1, 2].map((day) => stateOf(rig, drawSetting(rig, `day ${day}`, catalogue))),
  ]),
);

test('only the right hook-up survives, is at the check’s own port, has a limit and can tell it', () => {
  const said = new Map<string, number>();
  expectSoundQuestions('which-tool', (question) => {
    if (question.features.opening) return;
    const task = taskOf(question);
    const options = optionsOf(question);
    const holds = (state: RigState) =>
      options.every(({ line, right, because }) => {
        const hook = hookOf(line, task);
        return right ? faultOf(hook, task, state) === undefined : bears(because, hook, task, state);
      });
    expect(task.days.map(holds)).toContain(true);
    for (const { right, because } of options) if (!right) said.set(because.say, (said.get(because.say) ?? 0) + 1);
  });
  for (const reason of [
    'destroyed',
    'mayCatch',
    'isPressure',
    'isVacuum',
    'wrongPort',
    'noLine',
    'coarse',
    'shortRange',
  ])
    expect(said.get(reason) ?? 0, reason).toBeGreaterThan(20);
});

test('a fitting is opened at rest, and the speed of every jet is that of its pressure', () => {
  let openings = 0;
  expectSoundQuestions(
    'which-tool',
    (question) => {
      if (!question.features.opening) return;
      openings++;
      for (const { line, right, because } of optionsOf(question)) {
        expect(idIn(line, 'condition') === 'key-off').toBe(right);
        if (right) continue;
        const { speed, pressure } = because.with as unknown as { speed: number; pressure: { quantity: number } };
        // Bernoulli with a density between those of a hot summer fuel and of a cold heavy one.
        expect(speed).toBeGreaterThan(Math.sqrt((2e6 * pressure.quantity) / 880));
        expect(speed).toBeLessThan(Math.sqrt((2e6 * pressure.quantity) / 780));
        expect(pressure.quantity).toBeGreaterThan(0.7);
      }
    },
    1000,
  );
  expect(openings).toBeGreaterThan(10);
});

test('whoever asks about safety gets a choice that would hurt somebody or break something', () => {
  const kinds = ['jet', 'destroyed', 'mayCatch', 'mayBeDestroyed'];
  expectSoundQuestions(
    'which-tool',
    (question) => {
      const dangers = optionsOf(question).filter(({ because, right }) => !right && kinds.includes(because.say));
      expect(question.topics.includes('safe-working-and-isolation')).toBe(dangers.length > 0);
      expect(question.cautionsAfter?.length ?? 0).toBeGreaterThan(0);
    },
    1000,
  );
});

interface Task {
  check: Check;
  quantity: Quantity;
  rig: string;
  days: readonly RigState[];
}

interface Hook {
  gauge: Gauge;
  ports: string;
  condition: SteadyConditionId;
}

type Said = Extract<Line, { say: string }>;

function taskOf({ stem, figure, rig }: GeneratedQuestion): Task {
  const check = catalogue.checks.get(idIn(stem[0], 'check'));
  const shown = figure?.figure === 'limits' ? aRig(rig).limits.find(({ id }) => id === figure.limits?.[0]) : undefined;
  const quantity = check?.quantities.find(({ id }) => id === shown?.quantity);
  if (!check || !quantity) throw new Error('Nothing is asked for');
  return { check, quantity, rig, days: states.get(rig) ?? [] };
}

function optionsOf({ answer, key }: GeneratedQuestion) {
  if (answer.form !== 'choice' || key.form !== 'choice') throw new Error('Nothing is to be chosen');
  return answer.options.map(({ id, line }) => {
    const because = (key.because?.[id] ?? { say: 'nothing' }) as Said;
    return { id, line, right: key.right.includes(id), because };
  });
}

function hookOf(line: Line, { quantity }: Task): Hook {
  const gauge = catalogue.gauges.get(idIn(line, 'gauge'));
  if (!gauge) throw new Error('There is no such gauge');
  const ports = (valueIn(line, 'ports') as { list: { line: Said }[] }).list.map((port) => port.line.with?.port);
  return {
    gauge: gaugeFor(gauge, quantity),
    ports: ports.join(' '),
    condition: idIn(line, 'condition') as SteadyConditionId,
  };
}

/** What speaks against a hook-up; undefined for a good one. */
function faultOf(hook: Hook, task: Task, state: RigState): string | undefined {
  const { gauge, condition } = hook;
  const { check, quantity, rig } = task;
  if (hook.ports !== ownPorts(task)) return 'port';
  if (!check.instruments.includes(gauge.id)) return 'instrument';
  const limit = limitOf(task, hook);
  if (!limit) return 'limit';
  const si = trueValue(state, condition, quantity, 0);
  if (pressureMayReach(hook, task, state, rig) > toSi(gauge.range.max, gauge.unit)) return 'burst';
  const value = fromSi(si, gauge.unit);
  return Math.min(value - limit.min, limit.max - value) > guardOf(gauge, value) ? undefined : 'coarse';
}

/** Whether what is said against a hook-up is so, by the solver, on this day. */
function bears({ say, with: values }: Said, hook: Hook, task: Task, state: RigState): boolean {
  const { gauge, condition } = hook;
  const other = otherAt(hook, task);
  const si = trueValue(state, condition, other.quantity, 0);
  const number = (values?.times as { number: number } | undefined)?.number ?? 0;
  const most = toSi(gauge.range.max, gauge.unit);
  const near = (one: number, two: number) => Math.abs(one - two) < 1e-4 * Math.max(1, Math.abs(two));
  switch (say) {
    case 'destroyed':
      return ratioOf(gauge) < number && near(number, si / most);
    case 'mayCatch':
      return number > 1 && near(number, highestTurning(other.quantity, state) / most);
    case 'mayBeDestroyed':
      return number > ratioOf(gauge) && si / most <= ratioOf(gauge);
    case 'isPressure':
      return si > 0 && !gauge.measures.includes('gauge-pressure');
    case 'isVacuum':
      return si > 0 && !gauge.measures.includes('vacuum');
    case 'wrongPort':
      return hook.ports !== ownPorts(task);
    case 'noLine':
      return limitOf(task, hook) === undefined;
    case 'shortRange': {
      const { min, max } = limitOf(task, hook) ?? { min: 0, max: 0 };
      return [min, max].some((end) => Number.isFinite(end) && (end > gauge.range.max || end < gauge.range.min));
    }
    case 'coarse': {
      const { min, max } = limitOf(task, hook) ?? { min: 0, max: 0 };
      const value = fromSi(si, gauge.unit);
      const distance = Math.min(value - min, max - value);
      return distance > 0 && distance < guardOf(gauge, value);
    }
    default:
      return false;
  }
}

function ratioOf({ overRange }: Gauge): number {
  return overRange.kind === 'destroyed' ? overRange.ratio : Number.POSITIVE_INFINITY;
}

/** The highest that a gauge may see where it hangs: once the engine turns it may catch. */
function pressureMayReach({ gauge, condition }: Hook, { quantity }: Task, state: RigState, rig: string): number {
  if (quantity.of.kind !== 'above-ambient' || gauge.overRange.kind !== 'destroyed') return 0;
  const turning = (aRig(rig).conditions[condition]?.engineRpm ?? 0) > 0;
  return turning ? highestTurning(quantity, state) : trueValue(state, condition, quantity, 0);
}

function highestTurning(quantity: Quantity, state: RigState): number {
  const turning: ConditionId[] = ['cranking', 'idle', 'high-idle', 'full-load'];
  return Math.max(...turning.map((condition) => trueValue(state, condition, quantity, 0)));
}

function ownPorts({ check, rig }: Task): string {
  return (check.ports[rig] ?? []).join(' ');
}

/** The check whose ports these are: its own, or the first other one that measures the same kind of thing there. */
function otherAt({ ports }: Hook, task: Task): { quantity: Quantity } {
  if (ports === ownPorts(task)) return task;
  for (const { ports: at, quantities } of catalogue.checks.values()) {
    const quantity = quantities.find(({ measures, grades }) => measures === task.quantity.measures && !grades);
    if (quantity && (at[task.rig] ?? []).join(' ') === ports) return { quantity };
  }
  throw new Error(`No check is done at ${ports}`);
}

function limitOf({ check, quantity, rig }: Task, { gauge, condition }: Hook) {
  const line = aRig(rig).limits.find(
    (one) => one.check === check.id && one.quantity === quantity.id && one.condition === condition,
  );
  return line && inUnit(line, gauge.unit);
}

function inUnit({ min, max, unit }: Pick<LimitLine, 'min' | 'max' | 'unit'>, other: Gauge['unit']) {
  const convert = (end: number | undefined, none: number) =>
    end === undefined ? none : fromSi(toSi(end, unit), other);
  return { min: convert(min, Number.NEGATIVE_INFINITY), max: convert(max, Number.POSITIVE_INFINITY) };
}

function guardOf({ accuracy, range, display, resolution }: Gauge, value: number): number {
  const span = range.max - range.min;
  const share = (value - range.min) / span;
  const quarter = share < 0.25 ? 0 : share > 0.75 ? 2 : 1;
  const percent = accuracy.kind === 'quarters' ? accuracy.percentOfSpan[quarter] : undefined;
  const error =
    accuracy.kind === 'absolute'
      ? accuracy.amount
      : (span * (percent ?? (accuracy.kind === 'class' ? accuracy.percentOfSpan : 0))) / 100;
  return 1.645 * Math.sqrt((error ** 2 + (display === 'digital' ? resolution / 2 : resolution) ** 2) / 3);
}

function idIn(line: Line | undefined, name: string): string {
  return (valueIn(line, name) as { id: string } | undefined)?.id ?? '';
}

function valueIn(line: Line | undefined, name: string): Value | undefined {
  return line && 'say' in line ? line.with?.[name] : undefined;
}
