import { z } from 'zod';
import { areas } from '../areas';
import { conditionIds } from '../rig/condition';
import { idSchema, sourceSchema } from '../source';

/**
 * How severity s moves one parameter of one element.
 * `multiply`: × (1 + (at1 − 1)·s). `scale`: × at1^s. `add`: + at1·s. Each leaves the parameter untouched at s = 0.
 */
const effectSchema = z.strictObject({
  element: idSchema,
  parameter: z.string(),
  by: z.enum(['multiply', 'scale', 'add']),
  at1: z.number(),
});

export type Effect = z.infer<typeof effectSchema>;

const repairSchema = z.strictObject({
  id: idSchema,
  minutes: z.number().positive(),
  /** What has to be fetched from the stores. */
  parts: z.array(z.strictObject({ id: idSchema, text: z.strictObject({ en: z.string() }) })),
  text: z.strictObject({ en: z.string() }),
});

export const causeSchema = z.strictObject({
  id: idSchema,
  area: z.enum(areas),
  /** The element at fault; null for `no-fuel-fault`. */
  element: idSchema.nullable(),
  effects: z.array(effectSchema),
  /** Effects on rigs whose parts differ in size or name, in place of those above. */
  onRigs: z.record(idSchema, z.array(effectSchema)).optional(),
  /** Weather in which it happens at all, °C. */
  airC: z.tuple([z.number(), z.number()]).optional(),
  /** Severities a case may draw. */
  severity: z.strictObject({ min: z.number().min(0).max(1), max: z.number().min(0).max(1) }),
  /** How common the cause is, relative to the others. */
  weight: z.number().positive(),
  repairs: z.array(repairSchema).min(1),
  /** Checks that show the repair worked. */
  provenBy: z.array(z.strictObject({ check: idSchema, condition: z.enum(conditionIds) })).min(1),
  source: sourceSchema,
  text: z.strictObject({ en: z.strictObject({ name: z.string(), how: z.string() }) }),
});

export type Cause = z.infer<typeof causeSchema>;
