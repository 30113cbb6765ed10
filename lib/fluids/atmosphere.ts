import type { Kelvin, KilogramPerCubicMetre, Metre, Pascal } from '../units';
import { STANDARD_GRAVITY } from '../units';

export const STANDARD_PRESSURE: Pascal = 101_325;
const STANDARD_TEMPERATURE: Kelvin = 288.15;
/** K/m */
const LAPSE_RATE = 0.0065;
/** Of dry air in the standard, 8.31432/0.0289644 J/(kg·K). */
const AIR_GAS_CONSTANT = 8.31432 / 0.0289644;
const EARTH_RADIUS: Metre = 6_356_766;
const TROPOPAUSE: Metre = 11_000;

/**
 * Air pressure at a height above sea level in the standard atmosphere.
 *
 * p = p0·(1 − L·H/T0)^(g/(R·L)), H = r·Z/(r + Z) the geopotential height. Range: up to 11 km geopotential height, where
 * the lapse rate ends.
 *
 * @source U.S. Standard Atmosphere 1976 (NASA-TM-X-74335), equations 18 and 33a.
 */
export function ambientPressure(altitude: Metre): Pascal {
  const height = (EARTH_RADIUS * altitude) / (EARTH_RADIUS + altitude);
  if (!(height <= TROPOPAUSE)) throw new RangeError(`Altitude ${altitude} m lies above the troposphere (11 km)`);
  const exponent = STANDARD_GRAVITY / (AIR_GAS_CONSTANT * LAPSE_RATE);
  return STANDARD_PRESSURE * (1 - (LAPSE_RATE * height) / STANDARD_TEMPERATURE) ** exponent;
}

/** Density of dry air as an ideal gas, p/(R·T). Range: up to a few bar, where air is ideal to 0.1 %. */
export function airDensity(pressure: Pascal, temperature: Kelvin): KilogramPerCubicMetre {
  return pressure / (AIR_GAS_CONSTANT * temperature);
}
