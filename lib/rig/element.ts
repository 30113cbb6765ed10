import { z } from 'zod';
import { idSchema, sourceSchema } from '../source';

/**
 * The kinds of element that a rig is built from, with their parameters as content gives them. Units stand in the names;
 * bind-law.ts converts them to SI once. A cause changes these parameters and nothing else.
 */
const positive = z.number().positive();
const atLeastZero = z.number().nonnegative();
const flowCoefficient = z.number().positive().max(1);
const share = z.number().min(0).max(1);
/** Hydraulic power over shaft power; the rest warms the fuel. */
const efficiency = z.number().positive().max(1);

const between = {
  id: idSchema,
  from: idSchema,
  to: idSchema,
  source: sourceSchema,
  text: z.strictObject({ en: z.string() }),
};
const alone = { id: idSchema, source: sourceSchema, text: z.strictObject({ en: z.string() }) };

export const elementSchema = z.discriminatedUnion('kind', [
  /** From ambient, through the vent, to the tank's bottom. */
  z.strictObject({
    kind: z.literal('tank'),
    ...between,
    ventAreaMm2: positive,
    flowCoefficient,
    depthM: positive,
    volumeL: positive,
    /** Heat lost to the air around, per kelvin. */
    coolingWPerK: atLeastZero,
    /** Share of the fuel that the setting's tank level promises. */
    levelShare: atLeastZero,
    /** Fuel warmer than it would be, whatever warms it. */
    warmthK: atLeastZero,
    /** Cloud point above that of the grade the case names: the wrong fuel for the weather. */
    cloudShiftK: atLeastZero,
    /** Water in what the pick-up draws, by volume. */
    waterShare: atLeastZero.max(1),
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
  z.strictObject({
    kind: z.literal('cooling-plate'),
    ...between,
    areaMm2: positive,
    flowCoefficient,
    /** Heat that the control unit gives to the fuel while the engine turns. */
    heatW: atLeastZero,
  }),
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
    /** Current against its dead head, at rated voltage. */
    ratedAmps: positive,
    /** What wear has left of flow and head. */
    condition: share,
    /** What the wiring leaves of the voltage under load. */
    supplyShare: share,
    /** 1 where the motor's own circuit is whole, 0 where it is open. */
    circuitShare: share,
    efficiency,
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
    efficiency,
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
    /** Share of the area that a stuck valve, or one without current, leaves open at any demand. */
    stuckOpenFraction: share,
    /** Resistance of the actuator's circuit, at its connector. */
    coilOhm: positive,
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
    efficiency,
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
    cylinders: z.int().positive(),
    /** What a single worn injector adds; which one, the setting says. */
    oneClearanceUm3: atLeastZero,
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
  /** Opens where the control unit's current lets it: at a share of the commanded pressure, by spring alone without current. */
  z.strictObject({
    kind: z.literal('pressure-control-valve'),
    ...between,
    /** Opening pressure relative to the commanded one. */
    holdShare: positive,
    springMpa: positive,
    overrideMpaPerLmin: positive,
    seatLeakMm2: positive,
    flowCoefficient,
  }),
  /** Fuel lost to the outside wherever the line is above ambient pressure. */
  z.strictObject({ kind: z.literal('outside-leak'), ...between, areaMm2: atLeastZero, flowCoefficient }),
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
    /** What reaches it of its 5 V reference. */
    referenceShare: share,
  }),
]);

export type RigElement = z.infer<typeof elementSchema>;
export type ElementKind = RigElement['kind'];
export type ElementOf<K extends ElementKind> = Extract<RigElement, { kind: K }>;
