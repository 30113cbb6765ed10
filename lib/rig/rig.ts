import { z } from 'zod';
import { idSchema, portIdSchema, sourceSchema } from '../source';
import { unitNames } from '../units';
import { conditionIds } from './condition';

import { type ElementKind, type ElementOf, elementSchema } from './element';

const positive = z.number().positive();
const atLeastZero = z.number().nonnegative();

/** Pressure sides, which the drawing shows by line style. */
export const sides = ['ambient', 'suction', 'low', 'high', 'return'] as const;

const nodeSchema = z.strictObject({
  id: idSchema,
  side: z.enum(sides),
  /** Held at ambient pressure. */
  fixed: z.literal('ambient').optional(),
});

const conditionSchema = z.strictObject({
  engineRpm: atLeastZero,
  liftPumpVolts: atLeastZero,
  railCommandMpa: atLeastZero,
  injectedMm3PerShot: atLeastZero,
  /** Fuel in the low-pressure circuit above air temperature. */
  fuelRiseK: atLeastZero,
  /** Fuel in the high-pressure parts above the low-pressure circuit. */
  railRiseK: atLeastZero,
});

/** A line of the rig's limit sheet. */
export const limitSchema = z
  .strictObject({
    id: idSchema,
    check: idSchema,
    condition: z.enum(conditionIds),
    quantity: idSchema,
    min: z.number().optional(),
    max: z.number().optional(),
    unit: z.enum(unitNames),
    source: sourceSchema,
  })
  .refine(({ min, max }) => min !== undefined || max !== undefined, 'a limit needs min, max or both')
  .refine(({ min, max }) => min === undefined || max === undefined || min < max, 'min must lie below max');

export type LimitLine = z.infer<typeof limitSchema>;

/** A trouble code and the state that stores it: `value` in `condition` beyond the bound. */
const codeRuleSchema = z.strictObject({
  spn: z.int().positive(),
  fmi: z.int().min(0).max(31),
  condition: z.enum(conditionIds),
  value: z.string(),
  above: z.number().optional(),
  below: z.number().optional(),
});

export type CodeRule = z.infer<typeof codeRuleSchema>;

export const rigSchema = z.strictObject({
  id: idSchema,
  text: z.strictObject({ en: z.strictObject({ name: z.string(), about: z.string() }) }),
  invented: z.literal(true),
  shotsPerRevolution: positive,
  /** Rail pressure the control unit must see before it injects while cranking. */
  injectionEnableMpa: positive,
  /** Fuel missing from the low-pressure circuit after standing, which the pumps make good before the rail can rise. */
  standingVoidCm3: atLeastZero,
  /** Nobody cranks longer than this: the engine counts as not starting. */
  longestCrankSeconds: positive,
  /** From where on the driver notices. */
  complaints: z.strictObject({
    startSeconds: positive,
    /** Injected over commanded at full load below which the engine lacks power. */
    powerShare: positive,
    /** Injected over commanded between which it idles steadily. */
    idleShare: z.tuple([positive, positive]),
    idleGasFraction: positive,
  }),
  nodes: z.array(nodeSchema).min(2),
  elements: z.array(elementSchema).min(1),
  /** What the age of a filter, as the setting gives it, makes of its plugging at the end of its life. */
  ageing: z.array(
    z.strictObject({
      element: idSchema,
      age: z.enum(['supplyFilterAge', 'mainFilterAge']),
      pluggingAtEnd: z.number().min(1),
    }),
  ),
  /** Ranges from which a case draws its setting. */
  settings: z.strictObject({
    airC: z.tuple([z.number(), z.number()]),
    altitudeM: z.tuple([z.number(), z.number()]),
    filterAge: z.tuple([z.number().min(0), z.number().max(1)]),
    tankLevel: z.tuple([z.number().min(0), z.number().max(1)]),
    fuels: z.array(idSchema).min(1),
  }),
  ports: z.array(
    z.strictObject({
      id: portIdSchema,
      node: idSchema.optional(),
      element: idSchema.optional(),
      text: z.strictObject({ en: z.string() }),
    }),
  ),
  conditions: z.record(z.enum(conditionIds), conditionSchema),
  limits: z.array(limitSchema),
  codes: z.array(codeRuleSchema),
});

export type Rig = z.infer<typeof rigSchema>;
export type RigCondition = z.infer<typeof conditionSchema>;
export type RigNode = Rig['nodes'][number];

export function elementOfKind<K extends ElementKind>(rig: Rig, kind: K): ElementOf<K> {
  const found = rig.elements.find((element): element is ElementOf<K> => element.kind === kind);
  if (!found) throw new RangeError(`Rig ${rig.id} has no ${kind}`);
  return found;
}
