import { z } from 'zod';
import { idSchema, portIdSchema, sourceSchema } from '../source';
import { unitNames } from '../units';
import { conditionIds } from './condition';

/**
 * A rig: one fuel system as content describes it. Units stand in the parameter names; build-network.ts converts them
 * to SI once. A cause changes these parameters and nothing else.
 */
const positive = z.number().positive();
const atLeastZero = z.number().nonnegative();
const flowCoefficient = z.number().positive().max(1);

const between = {
  id: idSchema,
  from: idSchema,
  to: idSchema,
  source: sourceSchema,
  text: z.strictObject({ en: z.string() }),
};
const alone = { id: idSchema, source: sourceSchema, text: z.strictObject({ en: z.string() }) };

export const elementSchema = z.discriminatedUnion('kind', [
  /** From ambient, through the vent, to the pick-up at the tank's bottom. */
  z.strictObject({
    kind: z.literal('tank'),
    ...between,
    ventAreaMm2: positive,
    flowCoefficient,
    depthM: positive,
    /** Share of the fuel that the setting's tank level promises. */
    levelShare: atLeastZero,
  }),
  z.strictObject({
    kind: z.literal('pipe'),
    ...between,
    boreMm: positive,
    lengthM: positive,
    roughnessUm: atLeastZero,
    /** Sum of minor-loss coefficients of bends and fittings. */
    minorLoss: atLeastZero,
    /** Outlet above inlet. */
    riseM: z.number(),
  }),
  z.strictObject({
    kind: z.literal('filter'),
    ...between,
    ratingUm: positive,
    /** Darcy resistance of the clean medium, drop / (viscosity × flow), 1/m³. */
    mediumResistance: positive,
    /** Medium resistance relative to clean. */
    plugging: positive,
    housingAreaMm2: positive,
    flowCoefficient,
  }),
  z.strictObject({ kind: z.literal('orifice'), ...between, areaMm2: positive, flowCoefficient }),
  z.strictObject({ kind: z.literal('cooling-plate'), ...between, areaMm2: positive, flowCoefficient }),
  z.strictObject({
    kind: z.literal('check-valve'),
    ...between,
    crackKpa: positive,
    areaMm2: positive,
    flowCoefficient,
    /** Area left open when the valve sits shut. */
    seatLeakMm2: positive,
  }),
  z.strictObject({
    kind: z.literal('lift-pump'),
    ...between,
    /** Flow against no head, at rated voltage. */
    freeFlowLmin: positive,
    /** Head at no flow, at rated voltage. */
    deadHeadKpa: positive,
    ratedVolts: positive,
    /** What wear has left of flow and head. */
    condition: z.number().min(0).max(1),
  }),
  z.strictObject({
    kind: z.literal('gear-pump'),
    ...between,
    displacementCm3: positive,
    /** Pump turns per engine turn. */
    speedRatio: positive,
    /** Wilson's slip coefficient, dimensionless. */
    slipCoefficient: positive,
    /** Inlet pressure above vapour pressure at which the gear spaces are 63 % full. */
    fillKpa: positive,
  }),
  z.strictObject({
    kind: z.literal('pressure-regulator'),
    ...between,
    setKpa: positive,
    overrideKpaPerLmin: positive,
    /** Area held open by a stuck piston. */
    stuckOpenMm2: atLeastZero,
  }),
  z.strictObject({
    kind: z.literal('metering-valve'),
    ...between,
    areaMm2: positive,
    flowCoefficient,
    /** Share of the area that stays open at demand 0. */
    shutFraction: positive,
    /** Share of the area that deposits have left. */
    freeFraction: positive.max(1),
    /** Share of the area that a stuck valve leaves open at any demand. */
    stuckOpenFraction: atLeastZero,
  }),
  z.strictObject({
    kind: z.literal('high-pressure-pump'),
    ...between,
    displacementCm3: positive,
    speedRatio: positive,
    /** Chamber pressure above vapour pressure at which the plungers fill. */
    fillKpa: positive,
    /** What wear has left of the displacement. */
    capacityFraction: positive.max(1),
  }),
  z.strictObject({
    kind: z.literal('clearance-leak'),
    ...between,
    /** Flow × viscosity / drop; πDh³/12L of an annular gap. 1 µm³ = 1e-18 m³. */
    clearanceUm3: positive,
  }),
  z.strictObject({
    kind: z.literal('injector-return'),
    ...between,
    clearanceUm3: positive,
    /** Control fuel spilled per shot at the reference pressure. */
    controlMm3PerShot: atLeastZero,
    referenceMpa: positive,
  }),
  z.strictObject({
    kind: z.literal('injectors'),
    ...between,
    /** Longest opening relative to the opening that the commanded quantity needs at the commanded pressure. */
    durationHeadroom: positive.min(1),
    /** Rail pressure below which the needles do not lift. */
    needleOpeningMpa: positive,
  }),
  z.strictObject({
    kind: z.literal('relief-valve'),
    ...between,
    openMpa: positive,
    overrideMpaPerLmin: positive,
    seatLeakMm2: positive,
    flowCoefficient,
  }),
  /** Air drawn in at a joint. `to` is the joint's node; the air leaves the balance at `from`, where it is compressed away. */
  z.strictObject({ kind: z.literal('air-leak'), ...between, areaMm2: atLeastZero, flowCoefficient }),
  z.strictObject({ kind: z.literal('rail'), ...alone, node: idSchema, volumeCm3: positive }),
  z.strictObject({
    kind: z.literal('rail-sensor'),
    ...alone,
    node: idSchema,
    fullScaleMpa: positive,
    /** What the sensor adds to the truth. */
    offsetMpa: z.number(),
  }),
]);

export type RigElement = z.infer<typeof elementSchema>;
export type ElementKind = RigElement['kind'];
export type ElementOf<K extends ElementKind> = Extract<RigElement, { kind: K }>;

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
