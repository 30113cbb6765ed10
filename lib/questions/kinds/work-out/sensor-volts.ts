import { z } from 'zod';
import { elementOfKind } from '../../../rig/rig';
import type { Draw, DrawnBody } from '../../kind';
import { defineExercise } from './exercise';
import { amount, only, rounded, say, slip, sumsBody, toStep } from './sum';

const topics = ['electrical-supply-sensors-and-codes', 'metering-and-rail-control'];

const span = z.tuple([z.number().positive(), z.number().positive()]);

const ranges = z.strictObject({
  forms: z.array(z.enum(['to-pressure', 'to-volts', 'low-reference'])).min(1),
  /** Signals, and references that are low. */
  volts: span,
  lowReferenceVolts: span,
  pressureStepMpa: z.number().positive(),
  /** Of full scale. */
  shareTolerance: z.number().positive(),
});

type Ranges = z.infer<typeof ranges>;

/** V, of a sensor with a 5 V reference: the signal at no pressure and at full scale. */
const [AT_NONE, AT_FULL, REFERENCE] = [0.5, 4.5, 5];

export const sensorVolts = defineExercise({
  id: 'sensorVolts',
  topics,
  ranges,
  draw(draw) {
    switch (draw.stream('form').pick(draw.ranges.forms)) {
      case 'to-pressure':
        return toPressure(draw);
      case 'to-volts':
        return toVolts(draw);
      case 'low-reference':
        return lowReference(draw);
    }
  },
});

function toPressure({ rig, ranges, catalogue, stream }: Draw<Ranges>): DrawnBody {
  const { fullScaleMpa } = elementOfKind(rig, 'rail-sensor');
  const volts = rounded(stream('volts').between(...ranges.volts), 2);
  const pressure = (fullScaleMpa * (volts - AT_NONE)) / (AT_FULL - AT_NONE);
  const others = [...catalogue.rigs.values()].map((other) => elementOfKind(other, 'rail-sensor').fullScaleMpa);
  const values = {
    ...sensor(fullScaleMpa, rig.id),
    volts: amount(volts, 'V', 2),
    over: amount(volts - AT_NONE, 'V', 2),
  };
  return sumsBody({
    stem: [
      say('sensorVolts-sensor', only(values, 'rig', 'fullScale')),
      say('sensorVolts-to-pressure', only(values, 'volts')),
    ],
    sums: [
      {
        id: 'pressure',
        line: say('sensorVolts-pressure'),
        units: ['MPa', 'bar'],
        value: pressure,
        tolerance: fullScaleMpa * ranges.shareTolerance,
        slips: [
          slip('forgot-half-volt', (fullScaleMpa * volts) / (AT_FULL - AT_NONE)),
          slip('divided-by-reference', (fullScaleMpa * volts) / REFERENCE),
          ...others
            .filter((other) => other !== fullScaleMpa)
            .map((other) => slip('other-full-scale', (pressure * other) / fullScaleMpa)),
        ],
      },
    ],
    explanation: [
      say('sensorVolts-over', values),
      say('sensorVolts-share', { ...values, pressure: amount(pressure, 'MPa', 1) }),
    ],
    topics,
    features: { offset: 1 },
    seconds: 75,
  });
}

function toVolts({ rig, ranges, stream }: Draw<Ranges>): DrawnBody {
  const { fullScaleMpa } = elementOfKind(rig, 'rail-sensor');
  const [low, high] = ranges.volts.map((volts) => (fullScaleMpa * (volts - AT_NONE)) / (AT_FULL - AT_NONE));
  const pressure = toStep(stream('pressure').between(low ?? 0, high ?? fullScaleMpa), ranges.pressureStepMpa);
  const share = pressure / fullScaleMpa;
  const volts = AT_NONE + (AT_FULL - AT_NONE) * share;
  const values = { ...sensor(fullScaleMpa, rig.id), pressure: amount(pressure, 'MPa', 0) };
  return sumsBody({
    stem: [
      say('sensorVolts-sensor', only(values, 'rig', 'fullScale')),
      say('sensorVolts-to-volts', only(values, 'pressure')),
    ],
    sums: [
      {
        id: 'volts',
        line: say('sensorVolts-volts'),
        units: ['V'],
        value: volts,
        tolerance: REFERENCE * ranges.shareTolerance,
        slips: [
          slip('forgot-half-volt', (AT_FULL - AT_NONE) * share),
          slip('all-of-reference', REFERENCE * share),
          slip('span-to-full-signal', AT_NONE + AT_FULL * share),
        ],
      },
    ],
    explanation: [say('sensorVolts-back', { ...values, volts: amount(volts, 'V', 2) })],
    topics,
    features: { offset: 1 },
    seconds: 75,
  });
}

/** The signal is a share of its reference: a control unit that reckons with 5 V sees too little. */
function lowReference({ rig, ranges, stream }: Draw<Ranges>): DrawnBody {
  const { fullScaleMpa } = elementOfKind(rig, 'rail-sensor');
  const reference = rounded(stream('reference').between(...ranges.lowReferenceVolts), 2);
  const volts = rounded(stream('volts').between(...ranges.volts), 2);
  const seen = (fullScaleMpa * (volts - AT_NONE)) / (AT_FULL - AT_NONE);
  const really = (fullScaleMpa * (volts / reference - AT_NONE / REFERENCE)) / ((AT_FULL - AT_NONE) / REFERENCE);
  const tolerance = fullScaleMpa * ranges.shareTolerance;
  const values = {
    ...sensor(fullScaleMpa, rig.id),
    volts: amount(volts, 'V', 2),
    reference: amount(reference, 'V', 2),
    over: amount(volts - AT_NONE, 'V', 2),
    share: amount((100 * volts) / reference, '%', 1),
    overShare: amount((100 * volts) / reference - 10, '%', 1),
    seen: amount(seen, 'MPa', 1),
    really: amount(really, 'MPa', 1),
  };
  const units = ['MPa', 'bar'] as const;
  return sumsBody({
    stem: [
      say('sensorVolts-sensor', only(values, 'rig', 'fullScale')),
      say('sensorVolts-low-reference', only(values, 'reference', 'volts')),
    ],
    sums: [
      {
        id: 'seen',
        line: say('sensorVolts-seen'),
        units,
        value: seen,
        tolerance,
        slips: [slip('reckoned-with-reference', really), slip('forgot-half-volt', (fullScaleMpa * volts) / 4)],
      },
      {
        id: 'really',
        line: say('sensorVolts-really'),
        units,
        value: really,
        tolerance,
        slips: [
          slip('reckoned-with-five', seen),
          slip('forgot-tenth', (fullScaleMpa * (volts / reference)) / 0.8),
          slip('divided-by-reference', (fullScaleMpa * volts) / reference),
        ],
      },
    ],
    explanation: [say('sensorVolts-seen-step', values), say('sensorVolts-really-step', values)],
    topics,
    features: { offset: 1, ratiometric: 1 },
    seconds: 150,
  });
}

function sensor(fullScaleMpa: number, rig: string) {
  return { rig: { name: 'rig', id: rig }, fullScale: amount(fullScaleMpa, 'MPa', 0) } as const;
}
