import { gaugeFor } from '../../../cases/perform-check';
import type { Catalogue } from '../../../catalogue';
import { trueValue } from '../../../checks/quantity';
import { type Verdict, verdictOf, verdicts } from '../../../checks/verdict';
import type { Gauge } from '../../../gauges/gauge';
import { readGauge } from '../../../gauges/read-gauge';
import { inGaugeUnit, standardUncertainty } from '../../../gauges/uncertainty';
import type { RandomStream } from '../../../random';
import { toSi } from '../../../units';
import type { Draw } from '../../kind';
import { drawIfAny } from '../../shared/draw-again';
import { limitIn } from '../../shared/limit-words';
import { type Limited, limitedOn } from '../../shared/limited';
import { drawDay, type RigDay } from '../../shared/rig-day';
import { shuffled } from '../../shared/shuffled-options';
import { isUndisputed, type Judgement, judgementOf } from './judgement';
import type { JudgeRanges } from './ranges';

const DISPLAYS: readonly Gauge['display'][] = ['dial', 'cylinder', 'digital'];

/** A reading whose verdict is beyond dispute; each verdict as often as the others, where the topic has readings for all. */
export function drawJudgement(draw: Draw<JudgeRanges>, topic: string | undefined): Judgement {
  for (const verdict of shuffled(draw.stream('verdict'), verdicts)) {
    const judgement = drawWith(draw, topic, verdict);
    if (judgement) return judgement;
  }
  throw new RangeError(`Nothing to be judged on ${topic}`);
}

function drawWith(draw: Draw<JudgeRanges>, topic: string | undefined, verdict: Verdict): Judgement | undefined {
  const { rig, ranges, catalogue, stream } = draw;
  const candidates = limitedOn(rig, catalogue, topic).filter(
    ({ check }) => instrumentsOf(check.instruments, catalogue).length > 0,
  );
  return drawIfAny(stream, (tried) => {
    const limited = tried('check').pick(candidates);
    const instrument = tried('instrument').pick(instrumentsOf(limited.check.instruments, catalogue));
    const gauge = gaugeFor(instrument, limited.quantity);
    const sound = soundValue(drawDay(tried('day'), rig, catalogue), limited, gauge);
    const truth = drawTruth(tried('truth'), limited, gauge, sound, verdict, ranges);
    if (truth === undefined) return undefined;
    const judgement = judge(limited, instrument, gauge, truth);
    const drawn = judgement && verdictOf(judgement.comparison) === verdict && isUndisputed(judgement, ranges);
    return drawn ? judgement : undefined;
  });
}

function instrumentsOf(ids: readonly string[], { gauges }: Catalogue): Gauge[] {
  return ids.flatMap((id) => gauges.get(id) ?? []).filter(({ display }) => DISPLAYS.includes(display));
}

/** What a sound rig would show, in the gauge's unit. */
function soundValue(day: RigDay, { quantity, condition }: Limited, gauge: Gauge): number {
  return inGaugeUnit(gauge, trueValue(day, condition, quantity, 0));
}

/** A truth that is likely to earn the verdict; undefined where none is. */
function drawTruth(
  stream: RandomStream,
  { line }: Limited,
  gauge: Gauge,
  sound: number,
  verdict: Verdict,
  { beyond, spilling, closeWithin }: JudgeRanges,
): number | undefined {
  const limits = limitIn(line, gauge.unit);
  const end = stream.pick((['min', 'max'] as const).filter((one) => limits[one] !== undefined));
  const limit = limits[end] ?? 0;
  const guard = 2 * (standardUncertainty(gauge, limit) / (toSi(1, gauge.unit) - toSi(0, gauge.unit)));
  if (verdict === 'cannot-tell') return limit + closeWithin * guard * stream.between(-1, 1);
  if (verdict === 'pass') return stream.between(sound, limit);
  const far = gauge.display === 'cylinder' ? spilling : beyond;
  const outwards = (end === 'max' ? 1 : -1) * (far * Math.abs(limit - sound) + 2 * guard);
  const truth = limit + stream.next() * outwards;
  return truth < Math.min(0, gauge.range.min) ? undefined : truth;
}

function judge(limited: Limited, instrument: Gauge, gauge: Gauge, truth: number): Judgement | undefined {
  const reading = readGauge(gauge, truth, 0);
  const at = { quantity: limited.quantity.id, unit: gauge.unit };
  if (reading.kind === 'destroyed') return undefined;
  if (reading.kind === 'value')
    return judgementOf(limited, instrument.id, gauge, { kind: 'value', ...at, value: reading.value });
  const limit = reading.end === 'high' ? gauge.range.max : gauge.range.min;
  return judgementOf(limited, instrument.id, gauge, { kind: 'off-scale', ...at, end: reading.end, limit });
}
