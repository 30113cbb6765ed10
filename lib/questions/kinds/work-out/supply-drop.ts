import { z } from 'zod';
import { drawDay } from '../../shared/rig-day';
import { brokenPoint, severitySchema } from './broken-point';
import { defineExercise } from './exercise';
import { amount, only, rounded, say, slip, sumsBody } from './sum';

const topics = ['electrical-supply-sensors-and-codes', 'priming-and-lift-pump'];

const ranges = z.strictObject({
  severity: severitySchema,
  leastDropV: z.number().positive(),
  voltsTolerance: z.number().positive(),
  shareTolerance: z.number().positive(),
});

export const supplyDrop = defineExercise({
  id: 'supplyDrop',
  topics,
  ranges,
  draw({ rig, ranges, catalogue, stream }) {
    const fault = { cause: 'lift-pump-supply-drop', severity: stream('severity').between(...ranges.severity) };
    const { liftPumpVoltage = 0, liftPumpCurrent = 0 } = brokenPoint(
      drawDay(stream('day'), rig, catalogue),
      fault,
      'key-on',
      catalogue,
    ).values;
    const battery = rig.conditions['key-on'].liftPumpVolts;
    const [pump, current] = [rounded(liftPumpVoltage, 1), rounded(liftPumpCurrent, 1)];
    const drop = battery - pump;
    if (drop < ranges.leastDropV || current <= 0) return undefined;
    const ohm = drop / current;
    const values = {
      rig: { name: 'rig', id: rig.id },
      port: { name: 'port', id: 'E1', of: rig.id },
      battery: amount(battery, 'V', 1),
      pump: amount(pump, 'V', 1),
      current: amount(current, 'A', 1),
      drop: amount(drop, 'V', 1),
      ohm: amount(ohm, 'Ω', 2),
    } as const;
    return sumsBody({
      stem: [say('supplyDrop-stem', only(values, 'rig', 'port', 'battery', 'pump', 'current'))],
      sums: [
        {
          id: 'drop',
          line: say('supplyDrop-drop'),
          units: ['V'],
          value: drop,
          tolerance: ranges.voltsTolerance,
          slips: [slip('sign', -drop), slip('added', battery + pump), slip('volts-at-pump', pump)],
        },
        {
          id: 'ohm',
          line: say('supplyDrop-ohm'),
          units: ['Ω'],
          value: ohm,
          tolerance: ohm * ranges.shareTolerance,
          slips: [
            slip('resistance-of-pump', pump / current),
            slip('battery-over-current', battery / current),
            slip('upside-down', current / drop),
            slip('multiplied', drop * current),
          ],
          follows: { part: 'drop', value: (earlier) => earlier / current },
        },
      ],
      explanation: [
        say('supplyDrop-subtract', values),
        say('supplyDrop-divide', values),
        say('supplyDrop-where', values),
      ],
      topics,
      seconds: 75,
    });
  },
});
