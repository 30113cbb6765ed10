import { z } from 'zod';
import { elementOfKind } from '../../../rig/rig';
import { voidAfterStanding } from '../../../rig/standing';
import { fromSi } from '../../../units';
import { drawDay } from '../../shared/rig-day';
import { brokenPoint, severitySchema } from './broken-point';
import { defineExercise } from './exercise';
import { amount, bare, only, rounded, say, slip, sumsBody, toStep } from './sum';

const topics = ['priming-and-lift-pump'];

const ranges = z.strictObject({
  severity: severitySchema,
  /** A new filter that goes on empty. */
  filterMl: z.tuple([z.number().positive(), z.number().positive()]),
  filterStepMl: z.number().positive(),
  shareTolerance: z.number().positive(),
});

export const primeTime = defineExercise({
  id: 'primeTime',
  topics,
  ranges,
  draw({ rig, ranges, catalogue, stream }) {
    const day = drawDay(stream('day'), rig, catalogue);
    const fault = { cause: 'lift-pump-weak', severity: stream('severity').between(...ranges.severity) };
    const { secondsToPrime = 0 } = brokenPoint(day, fault, 'key-on', catalogue).values;
    const empty = voidAfterStanding(rig, day.setting);
    // What the pump moves while it fills, against no more than its own lines.
    const delivery = rounded(fromSi(empty / secondsToPrime, 'L/min'), 1);
    const line = toStep(lineVolume(rig) * 1e6, 10);
    const filter = toStep(stream('filter').between(...ranges.filterMl), ranges.filterStepMl);
    const total = line + filter;
    const seconds = ((total / 1000) * 60) / delivery;
    const values = {
      rig: { name: 'rig', id: rig.id },
      line: amount(line, 'mL', 0),
      filter: amount(filter, 'mL', 0),
      delivery: amount(delivery, 'L/min', 1),
      total: amount(total, 'mL', 0),
      litres: amount(total / 1000, 'L', 3),
      minutes: amount(total / 1000 / delivery, 'min', 2),
      deliveryNumber: bare(delivery, 1),
      seconds: amount(seconds, 's', 0),
    } as const;
    const at = (ml: number) => ((ml / 1000) * 60) / delivery;
    return sumsBody({
      stem: [say('primeTime-stem', only(values, 'rig', 'line', 'filter', 'delivery'))],
      sums: [
        {
          id: 'seconds',
          line: say('primeTime-seconds'),
          units: ['s', 'min'],
          value: seconds,
          tolerance: seconds * ranges.shareTolerance,
          slips: [
            slip('filter-left-out', at(line)),
            slip('line-left-out', at(filter)),
            slip('minutes-for-seconds', total / 1000 / delivery),
            slip('millilitres-for-litres', total / delivery),
          ],
        },
      ],
      explanation: [say('primeTime-add', values), say('primeTime-divide', values), say('primeTime-real')],
      topics,
      features: { conversion: 1 },
      seconds: 90,
    });
  },
});

/** What the supply line holds. */
function lineVolume(rig: Parameters<typeof voidAfterStanding>[0]): number {
  const { boreMm, lengthM } = elementOfKind(rig, 'pipe');
  return (Math.PI / 4) * (boreMm * 1e-3) ** 2 * lengthM;
}
