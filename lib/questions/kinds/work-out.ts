import { z } from 'zod';
import { type Draw, defineKind } from '../kind';
import { drawAgain } from '../shared/draw-again';
import { busValue } from './work-out/bus-value';
import { convertUnit } from './work-out/convert-unit';
import type { Exercise } from './work-out/exercise';
import { filterDrop } from './work-out/filter-drop';
import { guardBand } from './work-out/guard-band';
import { holdDrop } from './work-out/hold-drop';
import { leakBack } from './work-out/leak-back';
import { primeTime } from './work-out/prime-time';
import { pumpDelivery } from './work-out/pump-delivery';
import { repairShare } from './work-out/repair-share';
import { residualPressure } from './work-out/residual-pressure';
import { sensorVolts } from './work-out/sensor-volts';
import { suctionAbsolute } from './work-out/suction-absolute';
import { isClear } from './work-out/sum';
import { supplyDrop } from './work-out/supply-drop';
import { throttlingHeat } from './work-out/throttling-heat';
import { viscosityChart } from './work-out/viscosity-chart';
import { volumeCorrection } from './work-out/volume-correction';

const exercises: readonly Exercise[] = [
  filterDrop,
  suctionAbsolute,
  volumeCorrection,
  convertUnit,
  sensorVolts,
  busValue,
  leakBack,
  primeTime,
  guardBand,
  holdDrop,
  throttlingHeat,
  pumpDelivery,
  repairShare,
  residualPressure,
  supplyDrop,
  viscosityChart,
];

const ranges = z.strictObject(Object.fromEntries(exercises.map((exercise) => [exercise.id, exercise.ranges])));

/** A number that a shop needs, from what is printed: pressure drops, corrections, conversions, signals and codes of the bus. */
export const workOut = defineKind({
  id: 'work-out',
  ranges,
  topics: [...new Set(exercises.flatMap(({ topics }) => topics))],
  make(draw) {
    const exercise = drawExercise(draw);
    return drawAgain(draw.stream, (stream) => {
      const body = exercise.draw({ ...draw, stream, ranges: draw.ranges[exercise.id] });
      return body && isClear(body) ? body : undefined;
    });
  },
});

function drawExercise({ rig, topic, stream }: Draw<unknown>): Exercise {
  const fitting = exercises.filter(
    ({ topics, fits }) => (topic === undefined || topics.includes(topic)) && (fits?.(rig, topic) ?? true),
  );
  return stream('exercise').pick(fitting);
}
