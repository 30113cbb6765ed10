import { type Kelvin, type SquareMetrePerSecond, ZERO_CELSIUS } from '../units';

/** A fluid's line on the ASTM viscosity chart: log10(log10 Z) = a − b·log10 T. */
export interface WaltherCoefficients {
  a: number;
  b: number;
}

export interface ViscosityPoint {
  temperature: Kelvin;
  viscosity: SquareMetrePerSecond;
}

const SQUARE_MILLIMETRE_PER_SECOND: SquareMetrePerSecond = 1e-6;
/** Below this Z needs further terms of the standard, which fuel never reaches. */
const LEAST_VISCOSITY: SquareMetrePerSecond = 0.21e-6;

/**
 * The viscosity–temperature line through two measured points.
 *
 * Z = ν + 0.7 + exp(−1.47 − 1.84ν − 0.51ν²), ν in mm²/s. Range: 0.21–2e7 mm²/s, temperatures at which the fuel is a
 * clear liquid (above its cloud point).
 *
 * @source ASTM D341, full form.
 */
export function fitWalther(first: ViscosityPoint, second: ViscosityPoint): WaltherCoefficients {
  const [y1, y2] = [chartOrdinate(first.viscosity), chartOrdinate(second.viscosity)];
  const [x1, x2] = [Math.log10(first.temperature), Math.log10(second.temperature)];
  const b = (y1 - y2) / (x2 - x1);
  return { a: y1 + b * x1, b };
}

/** The line through the two temperatures at which fuels are usually measured, 40 °C and 100 °C. */
export function walther(viscosity40: SquareMetrePerSecond, viscosity100: SquareMetrePerSecond): WaltherCoefficients {
  return fitWalther(
    { temperature: ZERO_CELSIUS + 40, viscosity: viscosity40 },
    { temperature: ZERO_CELSIUS + 100, viscosity: viscosity100 },
  );
}

/**
 * Kinematic viscosity on a fluid's line.
 *
 * ν = (Z − 0.7) − exp(−0.7487 − 3.295(Z − 0.7) + 0.6119(Z − 0.7)² − 0.3193(Z − 0.7)³), Z = 10^10^(a − b·log10 T).
 * The published inverse of Z(ν): it returns the fitted points to about 1e-4.
 *
 * @source ASTM D341, full form.
 */
export function kinematicViscosity({ a, b }: WaltherCoefficients, temperature: Kelvin): SquareMetrePerSecond {
  if (!(temperature > 0)) throw new RangeError(`No viscosity at ${temperature} K`);
  const z = Math.exp(Math.LN10 * Math.exp(Math.LN10 * a - b * Math.log(temperature)));
  const x = z - 0.7;
  const viscosity = x - Math.exp(-0.7487 + x * (-3.295 + x * (0.6119 - x * 0.3193)));
  return inRange(viscosity * SQUARE_MILLIMETRE_PER_SECOND, `at ${temperature} K`);
}

function chartOrdinate(viscosity: SquareMetrePerSecond): number {
  const nu = inRange(viscosity, 'of a fitted point') / SQUARE_MILLIMETRE_PER_SECOND;
  return Math.log10(Math.log10(nu + 0.7 + Math.exp(-1.47 - nu * (1.84 + nu * 0.51))));
}

function inRange(viscosity: SquareMetrePerSecond, where: string): SquareMetrePerSecond {
  if (viscosity >= LEAST_VISCOSITY) return viscosity;
  throw new RangeError(`Viscosity ${where} is ${viscosity} m²/s: ASTM D341 holds from ${LEAST_VISCOSITY} m²/s up`);
}
