import { describe, expect, it } from 'vitest';
import { readGauge } from '@/lib/gauges/read-gauge';
import { inGaugeUnit } from '@/lib/gauges/uncertainty';
import type { Line, Value } from '@/lib/questions/line';
import type { GeneratedQuestion } from '@/lib/questions/question';
import { DAYS, dayOf, type RigDay } from '@/lib/questions/shared/rig-day';
import { type SteadyConditionId, steadyConditionIds } from '@/lib/rig/condition';
import { operatingPoints } from '@/lib/rig/operating-point';
import { aRig, catalogue } from '../../support/bench-rig';
import { expectSoundQuestions } from '../../support/sound-questions';

/** Fuel goes through skin from about 100 psi, in Pa. @source Toolbox talks, HSE RR976 (reference page 8, seen). */
const SKIN = 0.7e6;

describe('spot the hazard', () => {
  it('calls dangerous what this rig’s pressures and temperatures make so, over 5,000 seeds', () => {
    expectSoundQuestions('spot-hazard', (question) => {
      const { answer, key } = question;
      if (!('options' in answer) || !('right' in key)) throw new Error('No options');
      const first = answer.options.some(({ line }) => sayOf(line).startsWith('first-'));
      const seen = first ? factsOf(question) : answer.options.map(({ line }) => line);
      for (const line of seen) expectTrue(line, question);
      if (first) return expect(key.right).toHaveLength(1);
      const dangers = answer.options.filter(({ line }) => sayOf(line).startsWith('hazard-'));
      expect(key.right).toEqual(dangers.map(({ id }) => id));
      // The cautions with the answer are those of everything seen.
      expect(question.cautionsAfter?.length).toBeGreaterThan(1);
    });
  });
});

/** Solved anew, not as the generator does it: all conditions of the rig from nothing. */
const solved = new Map<RigDay, ReturnType<typeof operatingPoints>>();

function expectTrue(line: Line, question: GeneratedQuestion): void {
  const [say, day] = [sayOf(line), dayOn(question)];
  const points = solved.get(day) ?? operatingPoints(day.rig, day.setting, day.fuel);
  solved.set(day, points);
  const condition = conditionOf(question);
  const danger = say.startsWith('hazard-');
  const about = say.replace(/^(hazard|safe)-/, '');
  if (about === 'gauge' || about === 'gauge-crank') {
    const reaches = about === 'gauge-crank' || !danger ? steadyConditionIds : [condition];
    expect(
      reaches.some((one) => bursts(line, points, one, question)),
      say,
    ).toBe(danger);
  }
  if (about === 'nut') {
    const off = number(valueIn(line, 'off'));
    const left = off < 60 ? bled(day, off) : (points['key-off'].values.trueRailPressure ?? Number.NaN);
    // Empty is what only wells up: 0.02 MPa, as the check of the fitting grades it.
    expect(danger ? left > SKIN : left < 0.02e6, `${say} at ${left}`).toBe(true);
  }
  if (danger && (about === 'hand' || about === 'loosen'))
    expect(points[condition].values.trueRailPressure).toBeGreaterThan(SKIN);
  if (danger && about === 'call') expect(points.cranking.values.trueRailPressure).toBeGreaterThan(SKIN);
  if (danger && about === 'scald')
    expect(points[condition].temperatures['return-manifold']).toBeGreaterThan(60 + 273.15);
}

function bursts(
  line: Line,
  points: ReturnType<typeof operatingPoints>,
  condition: SteadyConditionId,
  { rig }: GeneratedQuestion,
): boolean {
  const [named, port] = [valueIn(line, 'gauge'), valueIn(line, 'port')];
  const gauge = typeof named === 'object' && 'name' in named ? catalogue.gauges.get(named.id) : undefined;
  const node = aRig(rig).ports.find(({ id }) => id === port)?.node;
  if (!gauge || !node) throw new Error('No gauge at a port');
  const { pressures, values } = points[condition];
  const truth = inGaugeUnit(gauge, (pressures[node] ?? 0) - (values.ambientPressure ?? 0));
  return readGauge(gauge, truth, 0).kind === 'destroyed';
}

/** What the decay trace has left, read off between its points. */
function bled({ traces, rig }: RigDay, seconds: number): number {
  const { times, values } = traces.get('decay').lines[0] ?? { times: [], values: [] };
  const after = times.findIndex((time) => time >= seconds + rig.traces.decay.stopSeconds);
  return values[after < 0 ? values.length - 1 : after] ?? 0;
}

function factsOf({ figure }: GeneratedQuestion): readonly Line[] {
  return figure?.figure === 'scene' ? figure.facts : [];
}

function dayOn({ rig, stem: [scene] }: GeneratedQuestion): RigDay {
  const days = Array.from({ length: DAYS }, (_, day) => dayOf(day, aRig(rig), catalogue));
  const [air, fuel] = scene ? [valueIn(scene, 'air'), valueIn(scene, 'fuel')] : [];
  const found = days.filter(
    ({ setting }) =>
      typeof air === 'object' &&
      'quantity' in air &&
      Math.round(setting.airTemperature - 273.15) === air.quantity &&
      typeof fuel === 'object' &&
      'name' in fuel &&
      setting.fuel === fuel.id,
  );
  if (found.length !== 1 || !found[0]) throw new Error(`${found.length} days like that`);
  return found[0];
}

function conditionOf({ stem: [scene] }: GeneratedQuestion): SteadyConditionId {
  if (!scene) throw new Error('No scene');
  if (sayOf(scene) === 'scene-prime') return 'key-on';
  if (sayOf(scene) === 'scene-open') return 'key-off';
  const code = valueIn(scene, 'condition');
  return code === 'full' ? 'full-load' : code === 'idle' ? 'idle' : 'high-idle';
}

function sayOf(line: Line): string {
  return 'say' in line ? line.say : '';
}

function valueIn(line: Line, name: string): Value | undefined {
  return 'say' in line ? line.with?.[name] : undefined;
}

function number(value: Value | undefined): number {
  if (typeof value !== 'number') throw new Error('No number');
  return value;
}
