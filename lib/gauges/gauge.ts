import { z } from 'zod';
import { idSchema, sourceSchema } from '../source';
import { unitNames } from '../units';

/** What an instrument can be connected to. */
export const measurands = [
  'gauge-pressure',
  'vacuum',
  'pressure-drop',
  'flow',
  'gas',
  'bus',
  'codes',
  'temperature',
  'density',
  'level',
  'electrical',
  'sight',
  'trace',
] as const;
export type Measurand = (typeof measurands)[number];

/**
 * Accuracy of an instrument as a share of its span.
 * `class`: the same over the whole scale (EN 837-1). `quarters`: lower quarter, middle half, upper quarter (ASME B40.100).
 * `absolute`: a fixed amount in the instrument's unit.
 */
const accuracySchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('class'), percentOfSpan: z.number().positive() }),
  z.strictObject({ kind: z.literal('quarters'), percentOfSpan: z.tuple([z.number(), z.number(), z.number()]) }),
  z.strictObject({ kind: z.literal('absolute'), amount: z.number().nonnegative() }),
]);

const scaleSchema = z.strictObject({
  /** Value step between numbered marks. */
  major: z.number().positive(),
  /** Value step between the smallest marks. */
  minor: z.number().positive(),
});

const functionShape = {
  unit: z.enum(unitNames),
  range: z
    .strictObject({ min: z.number(), max: z.number() })
    .refine(({ min, max }) => min < max, 'min must lie below max'),
  /** Smallest step that can be told apart: the last digit, or half the smallest division of a dial. */
  resolution: z.number().positive(),
  accuracy: accuracySchema,
};

export const gaugeSchema = z.strictObject({
  id: idSchema,
  /**
   * `dial` and `trace` are read by eye; `digital` prints its value; `cylinder` is a graduated glass; `sight` is a clear hose;
   * `eye` is no instrument at all.
   */
  display: z.enum(['dial', 'digital', 'cylinder', 'sight', 'codes', 'trace', 'eye']),
  measures: z.array(z.enum(measurands)).min(1),
  ...functionShape,
  /** Further units it can be set to, each with a range of its own, as a multimeter has. */
  alsoReads: z.array(z.strictObject(functionShape)).optional(),
  /** Marks of a dial or cylinder. */
  scale: scaleSchema.optional(),
  /** What happens past the end of the range. Destroyed beyond `ratio` × full scale; otherwise it stops at the end. */
  overRange: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('destroyed'), ratio: z.number().min(1) }),
    z.strictObject({ kind: z.literal('stops') }),
  ]),
  source: sourceSchema,
  text: z.strictObject({ en: z.strictObject({ name: z.string(), accuracy: z.string() }) }),
});

export type Gauge = z.infer<typeof gaugeSchema>;
