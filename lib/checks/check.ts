import { z } from 'zod';
import { measurands } from '../gauges/gauge';
import { conditionIds } from '../rig/condition';
import { traceIds } from '../rig/traces/trace';
import { idSchema, portIdSchema, sourceSchema } from '../source';
import { unitNames } from '../units';

/** Where in the operating point a check's quantity is found. */
export const quantitySchema = z.strictObject({
  id: idSchema,
  measures: z.enum(measurands),
  /** Unit in which a screen or meter shows it, where that is not the instrument's own. */
  unit: z.enum(unitNames).optional(),
  /** What an eye makes of it: the first step whose bound the value stays below, the last one having none. */
  grades: z
    .strictObject({
      unit: z.enum(unitNames),
      steps: z.array(z.strictObject({ below: z.number().optional(), grade: z.int().min(0) })).min(2),
    })
    .optional(),
  of: z.discriminatedUnion('kind', [
    /** Pressure above ambient. */
    z.strictObject({ kind: z.literal('above-ambient'), node: idSchema }),
    /** Pressure below ambient, positive for a vacuum. */
    z.strictObject({ kind: z.literal('below-ambient'), node: idSchema }),
    z.strictObject({ kind: z.literal('drop'), from: idSchema, to: idSchema }),
    z.strictObject({ kind: z.literal('flow'), element: idSchema }),
    z.strictObject({ kind: z.literal('temperature'), node: idSchema }),
    z.strictObject({ kind: z.literal('value'), key: z.string() }),
    /** One number read off a trace, such as the time to a pressure. */
    z.strictObject({ kind: z.literal('trace'), trace: z.enum(traceIds), feature: z.string() }),
    z.strictObject({ kind: z.literal('code-count') }),
  ]),
});

export type Quantity = z.infer<typeof quantitySchema>;

/** What goes wrong with a check in practice, and what comes of it. */
const mistakeSchema = z.strictObject({
  id: idSchema,
  /** `misleading` reads well and says something else; the others are computed when it is done. */
  consequence: z.enum(['instrument-destroyed', 'off-scale', 'jet', 'misleading']),
  instrument: idSchema.optional(),
  condition: z.enum(conditionIds).optional(),
  text: z.strictObject({ en: z.string() }),
});

export type Mistake = z.infer<typeof mistakeSchema>;

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
  /** A fitting at this node is loosened to do it: with pressure behind it, a jet. */
  opens: idSchema.optional(),
  /** What it leaves to be put right before the vehicle is handed back: ids of restoring steps. */
  restore: z.array(idSchema),
  mistakes: z.array(mistakeSchema),
  source: sourceSchema,
  text: z.strictObject({
    en: z.strictObject({
      name: z.string(),
      how: z.string(),
      quantities: z.record(idSchema, z.string()),
      /** Words for the grades of quantities judged by eye, from 0 up. */
      grades: z.record(idSchema, z.array(z.string()).min(2)).optional(),
    }),
  }),
});

export type Check = z.infer<typeof checkSchema>;
