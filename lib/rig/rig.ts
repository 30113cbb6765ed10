import { z } from 'zod';
import { idSchema, portIdSchema, sourceSchema } from '../source';
import { unitNames } from '../units';
import { conditionIds, steadyConditionIds } from './condition';
import { type ElementKind, type ElementOf, elementSchema } from './element';

const positive = z.number().positive();
const atLeastZero = z.number().nonnegative();
const share = z.number().min(0).max(1);

/** Pressure sides, which the drawing shows by line style. */
export const sides = ['ambient', 'suction', 'low', 'high', 'return'] as const;
export type Side = (typeof sides)[number];

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
  /** How long the engine has been run so when a gauge is read; the tank warms over that time. */
  minutes: positive,
  /** Fuel in the tank above the air when that time began. */
  tankRiseK: atLeastZero,
  /** Parts above the air where nothing flows: what a stopped engine still gives off. */
  restRiseK: atLeastZero,
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
  condition: z.enum(steadyConditionIds),
  value: z.string(),
  above: z.number().optional(),
  below: z.number().optional(),
});

export type CodeRule = z.infer<typeof codeRuleSchema>;

/** How long the traces run, and what they need that operating points do not. */
const tracesSchema = z.strictObject({
  /** Lift pump alone, then off. `gasCm3` is the air that filter housings and hoses always keep. */
  prime: z.strictObject({
    onSeconds: positive,
    offSeconds: positive,
    gasCm3: positive,
    /** Counts as primed from this pressure on. */
    primedKpa: positive,
    /** When, after the pump stops, the pressure that is left is read. */
    heldAfterSeconds: positive,
  }),
  crank: z.strictObject({ seconds: positive }),
  /** From idle to high idle as fast as the engine turns up. */
  snap: z.strictObject({ seconds: positive, pedalAt: positive, rampSeconds: positive }),
  decay: z.strictObject({ seconds: positive, stopSeconds: positive }),
  /** Tank vacuum over a long run under load. */
  tankVacuum: z.strictObject({ minutes: positive }),
});

export const rigSchema = z.strictObject({
  id: idSchema,
  text: z.strictObject({ en: z.strictObject({ name: z.string(), about: z.string() }) }),
  invented: z.literal(true),
  shotsPerRevolution: positive,
  /** Rail pressure the control unit must see before it injects while cranking. */
  injectionEnableMpa: positive,
  /** Where the low-pressure circuit counts as primed. */
  primingNode: idSchema,
  /** Where a clear hose shows what passes. */
  sightNode: idSchema,
  /** What runs back to the tank while it stands, and must be made good before the rail can rise. */
  standing: z.strictObject({
    /** Missing however short it stood. */
    leastCm3: atLeastZero,
    /** All that can run back. */
    mostCm3: positive,
    /** The valve that holds the column; its seat sets the pace. */
    heldBy: idSchema,
    columnM: positive,
  }),
  /** Heat that a node's parts lose to the air around, per kelvin. */
  lineLossWPerK: positive,
  /** The rail-pressure controller. */
  control: z.strictObject({
    /** Demand that is held when the sensor's signal makes no sense. */
    limpDemand: share,
    /** Demand from which the controller sets out in each running condition: the control unit's own map of a sound rig. */
    baseDemand: z.strictObject({ cranking: share, idle: share, 'high-idle': share, 'full-load': share }),
    /** Demand per megapascal that is missing. */
    proportionalPerMpa: positive,
    /** Demand per second and megapascal. */
    integralPerMpaSecond: positive,
  }),
  traces: tracesSchema,
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
    hoursStanding: z.tuple([atLeastZero, positive]),
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
  conditions: z.record(z.enum(steadyConditionIds), conditionSchema),
  limits: z.array(limitSchema),
  codes: z.array(codeRuleSchema),
});

export type Rig = z.infer<typeof rigSchema>;
export type RigCondition = z.infer<typeof conditionSchema>;
export type RigNode = Rig['nodes'][number];

/** The first element of a kind, where a rig may do without. */
export function findOfKind<K extends ElementKind>({ elements }: Rig, kind: K): ElementOf<K> | undefined {
  return elements.find((element): element is ElementOf<K> => element.kind === kind);
}

/** @throws RangeError when the rig has none. */
export function elementOfKind<K extends ElementKind>(rig: Rig, kind: K): ElementOf<K> {
  const found = findOfKind(rig, kind);
  if (!found) throw new RangeError(`Rig ${rig.id} has no ${kind}`);
  return found;
}
