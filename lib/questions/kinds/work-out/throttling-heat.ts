import { z } from 'zod';
import { densityAt, expansionAt } from '../../../fluids/density';
import { heatCapacity } from '../../../fluids/heat-capacity';
import { ZERO_CELSIUS } from '../../../units';
import { defineExercise } from './exercise';
import { amount, bare, only, rounded, say, slip, sumsBody, toStep } from './sum';

const topics = ['returns-and-temperature', 'high-pressure-and-leakage'];

const ranges = z.strictObject({
  fuelC: z.tuple([z.number(), z.number()]),
  railMpa: z.tuple([z.number().positive(), z.number().positive()]),
  railStepMpa: z.number().positive(),
  /** How the display gives the rail pressure. */
  units: z.array(z.enum(['MPa', 'bar'])).min(1),
  shareTolerance: z.number().positive(),
});

/** How much warmer a megapascal makes fuel that is let down without doing work, K: (1 − β·T)/(ρ·c). */
function kelvinPerMpa(density15: number, celsius: number): number {
  const temperature = celsius + ZERO_CELSIUS;
  const expansion = expansionAt(density15, temperature) * temperature;
  return ((1 - expansion) * 1e6) / (densityAt(density15, temperature) * heatCapacity(density15, temperature));
}

export const throttlingHeat = defineExercise({
  id: 'throttlingHeat',
  topics,
  ranges,
  draw({ rig, ranges, catalogue, stream }) {
    const fuel = stream('fuel').pick([...catalogue.fuels.values()]);
    const before = Math.round(stream('temperature').between(...ranges.fuelC));
    const rail = toStep(stream('rail').between(...ranges.railMpa), ranges.railStepMpa);
    const unit = stream('unit').pick(ranges.units);
    const each = rounded(kelvinPerMpa(fuel.density15, before), 2);
    const rise = rail * each;
    const values = {
      rig: { name: 'rig', id: rig.id },
      shown: amount(unit === 'MPa' ? rail : rail * 10, unit, 0),
      unit,
      rail: amount(rail, 'MPa', 0),
      railNumber: bare(rail, 0),
      before: amount(before, '°C', 0),
      each: amount(each, 'K', 2),
      rise: amount(rise, 'K', 0),
      after: amount(before + rise, '°C', 0),
    } as const;
    const misread = unit === 'bar' ? [slip('bar-as-mpa', rail * 10 * each)] : [slip('ten-too-little', rise / 10)];
    return sumsBody({
      stem: [
        say('throttlingHeat-stem', only(values, 'rig', 'shown', 'before')),
        say('throttlingHeat-each', only(values, 'each')),
      ],
      sums: [
        {
          id: 'rise',
          line: say('throttlingHeat-rise'),
          units: ['K'],
          value: rise,
          tolerance: rise * ranges.shareTolerance,
          slips: [...misread, slip('divided', rail / each)],
        },
        {
          id: 'after',
          line: say('throttlingHeat-after'),
          units: ['°C', '°F'],
          value: before + rise,
          tolerance: rise * ranges.shareTolerance,
          slips: [slip('rise-alone', rise), slip('rise-taken-off', before - rise)],
          follows: { part: 'rise', value: (earlier) => before + earlier },
        },
      ],
      explanation: [
        ...(unit === 'bar' ? [say('throttlingHeat-convert', values)] : []),
        say('throttlingHeat-multiply', values),
        say('throttlingHeat-add', values),
      ],
      topics,
      features: { conversion: Number(unit === 'bar') },
      seconds: 90,
    });
  },
});
