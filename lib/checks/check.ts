import { z } from 'zod';
import { measurands } from '../gauges/gauge';
import { conditionIds } from '../rig/condition';
import { idSchema, portIdSchema, sourceSchema } from '../source';
import { unitNames } from '../units';

/** Where in the operating point a check's quantity is found. */
export const quantitySchema = z.strictObject({
  id: idSchema,
  measures: z.enum(measurands),
  /** Unit in which a screen shows it, where that is not the instrument's own. */
  unit: z.enum(unitNames).optional(),
  of: z.discriminatedUnion('kind', [
    /** Pressure above ambient. */
    z.strictObject({ kind: z.literal('above-ambient'), node: idSchema }),
    /** Pressure below ambient, positive for a vacuum. */
    z.strictObject({ kind: z.literal('below-ambient'), node: idSchema }),
    z.strictObject({ kind: z.literal('drop'), from: idSchema, to: idSchema }),
    z.strictObject({ kind: z.literal('flow'), element: idSchema }),
    z.strictObject({ kind: z.literal('value'), key: z.string() }),
    z.strictObject({ kind: z.literal('code-count') }),
  ]),
});

export type Quantity = z.infer<typeof quantitySchema>;

/** A test procedure. One port, one hook-up, one or more quantities read from it. */
export const checkSchema = z.strictObject({
  id: idSchema,
  /** The rig's ports it is hooked up to, by rig. A rig that is not named does not have the check. */
  ports: z.record(idSchema, z.array(portIdSchema).min(1)),
  quantities: z.array(quantitySchema).min(1),
  /** Conditions the procedure calls for. */
  conditions: z.array(z.enum(conditionIds)).min(1),
  /** Conditions in which nothing but good sense stops a person from doing it. */
  unwiseConditions: z.array(z.enum(conditionIds)),
  /** Instruments that fit, the procedure's own first. */
  instruments: z.array(idSchema).min(1),
  minutes: z.number().positive(),
  cautions: z.array(idSchema),
  source: sourceSchema,
  text: z.strictObject({
    en: z.strictObject({ name: z.string(), how: z.string(), quantities: z.record(idSchema, z.string()) }),
  }),
});

export type Check = z.infer<typeof checkSchema>;
