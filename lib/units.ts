/** Everything in `lib` is SI: these aliases say which quantity a number is. Units appear only at the edges. */
export type Pascal = number;
export type CubicMetrePerSecond = number;
export type Kelvin = number;
export type KilogramPerCubicMetre = number;
export type PascalSecond = number;
export type SquareMetrePerSecond = number;
export type Metre = number;
export type SquareMetre = number;
export type Second = number;
export type RevolutionPerSecond = number;

/** Standard acceleration of gravity, m/s². Exact by definition (3rd CGPM, 1901). */
export const STANDARD_GRAVITY = 9.80665;
export const ZERO_CELSIUS: Kelvin = 273.15;

interface UnitDefinition {
  dimension:
    | 'pressure'
    | 'flow'
    | 'temperature'
    | 'fraction'
    | 'count'
    | 'time'
    | 'voltage'
    | 'current'
    | 'resistance'
    | 'density'
    | 'volume'
    | 'rotation'
    | 'viscosity'
    | 'grade';
  /** One of this unit in SI. */
  scale: number;
  /** SI value of this unit's zero. */
  offset?: number;
}

/**
 * @source psi, inHg (0 °C, conventional), US gal (231 in³) and US gal/min: NIST SP 811 (2008), appendix B.8.
 */
export const units = {
  Pa: { dimension: 'pressure', scale: 1 },
  kPa: { dimension: 'pressure', scale: 1e3 },
  MPa: { dimension: 'pressure', scale: 1e6 },
  bar: { dimension: 'pressure', scale: 1e5 },
  psi: { dimension: 'pressure', scale: 6894.757293168 },
  inHg: { dimension: 'pressure', scale: 3386.389 },
  'm³/s': { dimension: 'flow', scale: 1 },
  'L/min': { dimension: 'flow', scale: 1e-3 / 60 },
  'mL/min': { dimension: 'flow', scale: 1e-6 / 60 },
  'L/h': { dimension: 'flow', scale: 1e-3 / 3600 },
  'US gal/min': { dimension: 'flow', scale: 3.785411784e-3 / 60 },
  K: { dimension: 'temperature', scale: 1 },
  '°C': { dimension: 'temperature', scale: 1, offset: ZERO_CELSIUS },
  '°F': { dimension: 'temperature', scale: 5 / 9, offset: ZERO_CELSIUS - 160 / 9 },
  '1': { dimension: 'fraction', scale: 1 },
  '%': { dimension: 'fraction', scale: 0.01 },
  count: { dimension: 'count', scale: 1 },
  s: { dimension: 'time', scale: 1 },
  min: { dimension: 'time', scale: 60 },
  V: { dimension: 'voltage', scale: 1 },
  A: { dimension: 'current', scale: 1 },
  Ω: { dimension: 'resistance', scale: 1 },
  'kg/m³': { dimension: 'density', scale: 1 },
  L: { dimension: 'volume', scale: 1e-3 },
  mL: { dimension: 'volume', scale: 1e-6 },
  'US gal': { dimension: 'volume', scale: 3.785411784e-3 },
  rpm: { dimension: 'rotation', scale: 1 / 60 },
  'mm²/s': { dimension: 'viscosity', scale: 1e-6 },
  /** Steps of what an eye tells apart, counted from 0, the sound one. */
  grade: { dimension: 'grade', scale: 1 },
} as const satisfies Record<string, UnitDefinition>;

export type Unit = keyof typeof units;
export const unitNames = Object.keys(units) as [Unit, ...Unit[]];

function definition(unit: Unit): UnitDefinition {
  return units[unit];
}

/** A value in `unit`, in SI. */
export function toSi(value: number, unit: Unit): number {
  const { scale, offset = 0 } = definition(unit);
  return value * scale + offset;
}

/** An SI value, in `unit`. */
export function fromSi(si: number, unit: Unit): number {
  const { scale, offset = 0 } = definition(unit);
  return (si - offset) / scale;
}

export function dimensionOf(unit: Unit): UnitDefinition['dimension'] {
  return definition(unit).dimension;
}
