import { z } from 'zod';
import { fromSi } from '../../../units';
import { brokenState, drawDay } from '../../shared/rig-day';
import { defineExercise } from './exercise';
import { amount, bare, only, say, slip, sumsBody, toStep } from './sum';

const topics = ['priming-and-lift-pump', 'suction-tank-and-air'];

const ranges = z.strictObject({
  /** How far the valve that holds the fuel is gone: a few, since each is followed over time. */
  severities: z.array(z.number().min(0).max(1)).min(1),
  stepKpa: z.number().positive(),
  leastDropKpa: z.number().positive(),
  shareTolerance: z.number().positive(),
});

export const holdDrop = defineExercise({
  id: 'holdDrop',
  topics,
  ranges,
  draw({ rig, ranges, catalogue, stream }) {
    const cause = catalogue.causes.get('inlet-check-valve-leaking');
    if (!cause) return undefined;
    const state = brokenState(
      drawDay(stream('day'), rig, catalogue),
      cause,
      stream('severity').pick(ranges.severities),
    );
    const { pressureReached = 0, pressureHeld = 0 } = state.traces.get('prime').features;
    const seconds = rig.traces.prime.heldAfterSeconds;
    const reached = toStep(fromSi(pressureReached, 'kPa'), ranges.stepKpa);
    const held = toStep(fromSi(pressureHeld, 'kPa'), ranges.stepKpa);
    const drop = reached - held;
    if (drop < ranges.leastDropKpa) return undefined;
    const each = drop / seconds;
    const values = {
      rig: { name: 'rig', id: rig.id },
      port: { name: 'port', id: 'F1', of: rig.id },
      reached: amount(reached, 'kPa', 0),
      held: amount(held, 'kPa', 0),
      seconds: amount(seconds, 's', 0),
      number: bare(seconds, 0),
      drop: amount(drop, 'kPa', 0),
      each: amount(each, 'kPa', 1),
      percent: amount((100 * drop) / reached, '%', 0),
    } as const;
    return sumsBody({
      stem: [say('holdDrop-stem', only(values, 'rig', 'port', 'reached', 'seconds', 'held'))],
      sums: [
        {
          id: 'each',
          line: say('holdDrop-each'),
          units: ['kPa', 'psi', 'bar'],
          value: each,
          tolerance: Math.max(0.15, each * ranges.shareTolerance),
          slips: [
            slip('not-by-the-second', drop),
            slip('what-is-left', held / seconds),
            slip('what-was-reached', reached / seconds),
          ],
        },
        {
          id: 'percent',
          line: say('holdDrop-percent'),
          units: ['%'],
          value: (100 * drop) / reached,
          tolerance: 1,
          slips: [
            slip('share-of-what-is-left', (100 * drop) / held),
            slip('share-that-is-left', (100 * held) / reached),
          ],
        },
      ],
      explanation: [say('holdDrop-subtract', values), say('holdDrop-divide', values), say('holdDrop-curve')],
      topics,
      seconds: 75,
    });
  },
});
