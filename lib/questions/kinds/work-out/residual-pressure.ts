import { z } from 'zod';
import { defineExercise } from './exercise';
import { amount, bare, only, say, slip, sumsBody, toStep } from './sum';

const topics = ['safe-working-and-isolation'];

const ranges = z.strictObject({
  /** What a display may still show after the engine has stopped. */
  railMpa: z.tuple([z.number().positive(), z.number().positive()]),
  railStepMpa: z.number().positive(),
  units: z.array(z.enum(['MPa', 'bar', 'kPa'])).min(1),
  /** From which a jet may go through skin. */
  skinPsi: z.number().positive(),
  shareTolerance: z.number().positive(),
});

const perMpa = { MPa: 1, bar: 10, kPa: 1000 } as const;
/** As a chart prints it, psi to the megapascal. */
const PSI_PER_MPA = 145;

export const residualPressure = defineExercise({
  id: 'residualPressure',
  topics,
  ranges,
  draw({ rig, ranges, stream }) {
    const rail = toStep(stream('rail').between(...ranges.railMpa), ranges.railStepMpa);
    const unit = stream('unit').pick(ranges.units);
    const shown = rail * perMpa[unit];
    const psi = rail * PSI_PER_MPA;
    const times = psi / ranges.skinPsi;
    const values = {
      rig: { name: 'rig', id: rig.id },
      unit,
      shown: amount(shown, unit, unit === 'MPa' ? 1 : 0),
      rail: amount(rail, 'MPa', 1),
      railNumber: bare(rail, 1),
      skin: amount(ranges.skinPsi, 'psi', 0),
      psi: amount(psi, 'psi', 0),
      times: bare(times, 1),
    } as const;
    return sumsBody({
      stem: [
        say('residualPressure-stem', only(values, 'rig', 'shown')),
        say('residualPressure-chart', only(values, 'skin')),
      ],
      sums: [
        {
          id: 'psi',
          line: say('residualPressure-psi'),
          units: ['psi'],
          value: psi,
          tolerance: psi * ranges.shareTolerance,
          slips: [
            slip('inverse-factor', rail / PSI_PER_MPA),
            slip('ten-too-much', psi * 10),
            slip('ten-too-little', psi / 10),
          ],
        },
        {
          id: 'times',
          line: say('residualPressure-times', only(values, 'skin')),
          units: [],
          value: times,
          tolerance: times * ranges.shareTolerance,
          slips: [slip('upside-down', 1 / times)],
          follows: { part: 'psi', value: (earlier) => earlier / ranges.skinPsi },
        },
      ],
      explanation: [
        ...(unit === 'MPa' ? [] : [say('residualPressure-convert', values)]),
        say('residualPressure-multiply', values),
        say('residualPressure-divide', values),
        say('residualPressure-wait'),
      ],
      topics,
      features: { conversion: 1 },
      cautions: ['residual-pressure', 'injection-injury'],
      seconds: 75,
    });
  },
});
