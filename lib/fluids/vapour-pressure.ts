import type { Kelvin, Pascal } from '../units';

/** ln(p/Pa) = a − b/(T + c), through 17.9 Pa at 25 °C, 2.03 kPa at 100 °C and 101.325 kPa at 489.4 K. */
const antoine = { a: 21.3983, b: 4045.07, c: -79.657 };

/**
 * Vapour pressure of n-dodecane, which stands in for diesel: fuel is a mixture and its light ends boil off first, but
 * all that is asked of this number is that it is small beside the pressures of a fuel system.
 *
 * p = exp(a − b/(T + c)), Antoine's form. Range: −10…216 °C (freezing to normal boiling); smooth beyond.
 *
 * @source First two points: Lemmon & Huber, Energy & Fuels 18 (2004) 960–967, evaluated with CoolProp 8.0.0. Third:
 * normal boiling point, which the Antoine equation of Willingham et al. (1945) in the NIST WebBook also gives.
 */
export function vapourPressure(temperature: Kelvin): Pascal {
  if (!(temperature > -antoine.c)) throw new RangeError(`No vapour pressure at ${temperature} K`);
  return Math.exp(antoine.a - antoine.b / (temperature + antoine.c));
}
