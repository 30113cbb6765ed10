import { z } from 'zod';
import { elementOfKind } from '../../../rig/rig';
import { fromSi } from '../../../units';
import type { Draw } from '../../kind';
import { drawDay } from '../../shared/rig-day';
import { brokenPoint, holds, severitySchema, upperLimits } from './broken-point';
import { defineExercise } from './exercise';
import { amount, bare, only, say, slip, sumsBody, toStep } from './sum';

const topics = ['high-pressure-and-leakage', 'returns-and-temperature'];

const ranges = z.strictObject({
  severity: severitySchema,
  /** For how long it is collected, never a minute: with the engine running, and while the starter turns it. */
  seconds: z.array(z.number().positive()).min(1),
  crankingSeconds: z.array(z.number().positive()).min(1),
  leastMl: z.number().positive(),
  shareTolerance: z.number().positive(),
});

type Ranges = z.infer<typeof ranges>;

export const leakBack = defineExercise({
  id: 'leakBack',
  topics,
  ranges,
  draw(draw) {
    const given = measure(draw);
    if (!given || given.collected < draw.ranges.leastMl) return undefined;
    const { collected, seconds, cylinders } = given;
    const perMinute = (collected * 60) / seconds;
    const each = perMinute / cylinders;
    const values = {
      rig: { name: 'rig', id: draw.rig.id },
      condition: { name: 'condition', id: given.condition },
      collected: amount(collected, 'mL', 0),
      seconds: amount(seconds, 's', 0),
      number: bare(seconds, 0),
      cylinders,
      perMinute: amount(perMinute, 'mL/min', 1),
      each: amount(each, 'mL/min', 1),
    } as const;
    const { shareTolerance } = draw.ranges;
    return sumsBody({
      stem: [say('leakBack-stem', only(values, 'rig', 'cylinders', 'condition', 'collected', 'seconds'))],
      sums: [
        {
          id: 'total',
          line: say('leakBack-total'),
          units: ['mL/min', 'L/min'],
          value: perMinute,
          tolerance: perMinute * shareTolerance,
          slips: [
            slip('not-to-a-minute', collected),
            slip('scaled-wrong-way', (collected * seconds) / 60),
            slip('already-per-cylinder', each),
          ],
        },
        {
          id: 'each',
          line: say('leakBack-each'),
          units: ['mL/min', 'L/min'],
          value: each,
          tolerance: each * shareTolerance,
          slips: [slip('of-all-cylinders', perMinute), slip('not-to-a-minute', collected / cylinders)],
          follows: { part: 'total', value: (earlier) => earlier / cylinders },
        },
      ],
      explanation: [say('leakBack-scale', values), say('leakBack-divide', values), say('leakBack-mean')],
      topics,
      seconds: 60,
    });
  },
});

function measure({ rig, ranges, catalogue, stream }: Draw<Ranges>) {
  const { condition } = stream('condition').pick(upperLimits(rig, 'injector-return-flow'));
  const fault = { cause: 'injector-leakage-high', severity: stream('severity').between(...ranges.severity) };
  const point = brokenPoint(drawDay(stream('day'), rig, catalogue), fault, condition, catalogue);
  const { id, cylinders } = elementOfKind(rig, 'injector-return');
  if (condition !== 'cranking' && !holds(point)) return undefined;
  const seconds = stream('seconds').pick(condition === 'cranking' ? ranges.crankingSeconds : ranges.seconds);
  const collected = toStep((fromSi(point.flows[id] ?? 0, 'mL/min') * seconds) / 60, 1);
  return { condition, seconds, collected, cylinders };
}
