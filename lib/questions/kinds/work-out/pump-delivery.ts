import { z } from 'zod';
import type { SteadyConditionId } from '../../../rig/condition';
import type { OperatingPoint } from '../../../rig/operating-point';
import { elementOfKind, findOfKind, type Rig } from '../../../rig/rig';
import { fromSi } from '../../../units';
import type { Draw } from '../../kind';
import { drawDay } from '../../shared/rig-day';
import { brokenPoint, holds, severitySchema } from './broken-point';
import { defineExercise } from './exercise';
import { amount, bare, only, rounded, type Sum, say, slip, sumsBody } from './sum';

const ANY_PUMP = 'flow-path-and-components';
const GEAR_PUMP = 'low-pressure-supply-and-regulation';
const topics = [ANY_PUMP, GEAR_PUMP];

const ranges = z.strictObject({
  severity: severitySchema,
  conditions: z.array(z.enum(['idle', 'high-idle', 'full-load'])).min(1),
  shareTolerance: z.number().positive(),
});

type Ranges = z.infer<typeof ranges>;

type Given = NonNullable<ReturnType<typeof measure>>;

export const pumpDelivery = defineExercise({
  id: 'pumpDelivery',
  topics,
  fits: (rig, topic) => topic !== GEAR_PUMP || findOfKind(rig, 'gear-pump') !== undefined,
  ranges,
  draw(draw) {
    const given = measure(draw);
    if (!given) return undefined;
    const values = worded(given, draw.rig.id);
    return sumsBody({
      stem: [
        say('pumpDelivery-stem', only(values, 'rig', 'condition', 'pump', 'displacement', 'speed')),
        say('pumpDelivery-measured', only(values, 'gear', 'measured')),
      ],
      sums: [theorySum(given, draw.ranges.shareTolerance), shareSum(given)],
      explanation: [
        say('pumpDelivery-multiply', values),
        say('pumpDelivery-divide', values),
        say('pumpDelivery-meaning', values),
      ],
      topics: given.kind === 'gear-pump' ? topics : [ANY_PUMP],
      seconds: 90,
    });
  },
});

/** The gear pump, or the high-pressure pump of a rig that has none. */
function measure({ rig, ranges, catalogue, stream }: Draw<Ranges>) {
  const condition: SteadyConditionId = stream('condition').pick(ranges.conditions);
  const pump = findOfKind(rig, 'gear-pump') ?? elementOfKind(rig, 'high-pressure-pump');
  const cause = pump.kind === 'gear-pump' ? 'gear-pump-worn' : 'high-pressure-pump-worn';
  const fault = { cause, severity: stream('severity').between(...ranges.severity) };
  const point = brokenPoint(drawDay(stream('day'), rig, catalogue), fault, condition, catalogue);
  if (!holds(point)) return undefined;
  const speed = speedOf(rig, condition) * pump.speedRatio;
  const measured = rounded(flowOf(point, pump.id), pump.kind === 'gear-pump' ? 2 : 3);
  const theory = (pump.displacementCm3 * speed) / 1000;
  return { condition, kind: pump.kind, pump: pump.id, displacement: pump.displacementCm3, speed, measured, theory };
}

function speedOf(rig: Rig, condition: SteadyConditionId): number {
  return rig.conditions[condition].engineRpm;
}

function flowOf({ flows }: OperatingPoint, pump: string): number {
  return fromSi(flows[pump] ?? 0, 'L/min');
}

function worded({ condition, kind, pump, displacement, speed, measured, theory }: Given, rig: string) {
  const decimals = kind === 'gear-pump' ? 2 : 3;
  return {
    rig: { name: 'rig', id: rig },
    condition: { name: 'condition', id: condition },
    gear: kind === 'gear-pump' ? 'yes' : 'no',
    pump: { name: 'element', id: pump, of: rig },
    displacement: amount(displacement, 'mL', 2),
    displacementNumber: bare(displacement, 2),
    speed: amount(speed, 'rpm', 0),
    speedNumber: bare(speed, 0),
    measured: amount(measured, 'L/min', decimals),
    theory: amount(theory, 'L/min', decimals),
    share: amount((100 * measured) / theory, '%', 0),
  } as const;
}

function theorySum({ theory, displacement, speed }: Given, shareTolerance: number): Sum {
  return {
    id: 'theory',
    line: say('pumpDelivery-theory'),
    units: ['L/min', 'mL/min', 'US gal/min'],
    value: theory,
    tolerance: theory * shareTolerance,
    slips: [
      slip('millilitres-for-litres', displacement * speed),
      slip('by-the-second', theory / 60),
      slip('divided', speed / displacement),
    ],
  };
}

function shareSum({ theory, measured }: Given): Sum {
  const share = (100 * measured) / theory;
  return {
    id: 'share',
    line: say('pumpDelivery-share'),
    units: ['%'],
    value: share,
    tolerance: 1.5,
    slips: [slip('upside-down', (100 * theory) / measured), slip('what-is-missing', 100 - share)],
    follows: { part: 'theory', value: (earlier) => (100 * measured) / earlier },
  };
}
