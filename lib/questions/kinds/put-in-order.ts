import { z } from 'zod';
import { defineKind } from '../kind';
import { askInOrder } from './put-in-order/ordered';
import { partsInOrder } from './put-in-order/parts-in-order';
import { procedureSchema, stepsInOrder } from './put-in-order/steps-in-order';

/** Topics that have enough parts on one way of the fuel, on every rig. */
const PATH_TOPICS = [
  'flow-path-and-components',
  'suction-tank-and-air',
  'filtration',
  'high-pressure-and-leakage',
  'returns-and-temperature',
];
/** Topics that a procedure of the content is on. */
const WORK_TOPICS = [
  'safe-working-and-isolation',
  'priming-and-lift-pump',
  'low-pressure-supply-and-regulation',
  'metering-and-rail-control',
  'electrical-supply-sensors-and-codes',
  'fuel-quality',
  'instruments-and-uncertainty',
  'reasoning-and-repair-proof',
];

const countSchema = z
  .strictObject({ least: z.int().min(4), most: z.int().max(8) })
  .refine(({ least, most }) => least <= most, 'least must not lie above most');

const rangesSchema = z.strictObject({
  parts: countSchema,
  steps: countSchema,
  /** How often a question on any topic is on the way of the fuel. */
  pathShare: z.number().positive().max(0.9),
  procedures: z.array(procedureSchema).min(1),
  /** Marks that can be told apart. */
  marks: z.int().positive(),
});

/** Put parts in the order in which the fuel meets them, or the steps of a piece of work in the order that is safe. */
export const putInOrder = defineKind({
  id: 'put-in-order',
  asksWhatIsSafe: true,
  ranges: rangesSchema,
  topics: [...PATH_TOPICS, ...WORK_TOPICS],
  make({ rig, topic, ranges, catalogue, stream }) {
    const procedures = ranges.procedures.filter(({ topics }) => topic === undefined || topics.includes(topic));
    const ways = [
      ...(topic === undefined || PATH_TOPICS.includes(topic) ? [{ share: ranges.pathShare, onWay: true }] : []),
      ...(procedures.length > 0 ? [{ share: 1 - ranges.pathShare, onWay: false }] : []),
    ];
    const { onWay } = stream('way').pick(ways, ({ share }) => share);
    const ordered = onWay
      ? partsInOrder({ rig, topic, count: ranges.parts, catalogue, stream })
      : stepsInOrder(stream('procedure').pick(procedures), ranges.steps, stream);
    return askInOrder(ordered, stream, ranges.marks);
  },
});
