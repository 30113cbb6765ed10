import { type Kelvin, type KilogramPerCubicMetre, type Pascal, ZERO_CELSIUS } from '../units';

/** Ostwald coefficient of air at 273 K in the standard's reference liquid, whose density is 850 kg/m³. */
const AIR_AT_273 = 0.098;
/** kg/m³ */
const [LIGHTEST, HEAVIEST] = [630, 900];

/**
 * Bunsen coefficient of air in a petroleum liquid: volume of gas, brought to 273.15 K and 101.325 kPa, that one volume
 * of liquid holds in solution under 101.325 kPa of air.
 *
 * B = 7.70·L·(0.980 − d)·273.15/T, L = 0.300·exp(0.639·(700 − T)/T·ln(3.333·L0)), d = ρ15/1000, L0 = 0.098 for air.
 * Range: ρ15 630–900 kg/m³, 228–423 K.
 *
 * @source ASTM D2779; scope, definition and the density at 288 K read there, equations and L0 from memory.
 * @throws RangeError for a density outside the range.
 */
export function bunsenCoefficient(density15: KilogramPerCubicMetre, temperature: Kelvin): number {
  if (!(density15 >= LIGHTEST && density15 <= HEAVIEST))
    throw new RangeError(`Density at 15 °C is ${density15} kg/m³: D2779 holds from ${LIGHTEST} to ${HEAVIEST} kg/m³`);
  const referenceOstwald = 0.3 * Math.exp(((0.639 * (700 - temperature)) / temperature) * Math.log(3.333 * AIR_AT_273));
  const ostwald = 7.7 * referenceOstwald * (0.98 - density15 / 1000);
  return (ostwald * ZERO_CELSIUS) / temperature;
}

/**
 * Volume of air that has left solution, per volume of liquid, once liquid that was saturated at one pressure has come to
 * rest at another.
 *
 * B·(p0/p − 1)·T/273.15 below the saturation pressure p0, nothing above it. It is what equilibrium ends at: release
 * takes seconds, so liquid that is passing through holds on to most of it. Range: that of Henry's law and the ideal gas,
 * p of a few kilopascals and up; absolute pressures.
 *
 * @source Henry's law with the Bunsen coefficient as ASTM D2779 defines it.
 * @throws RangeError when there is no pressure: the gas would have no bounds.
 */
export function releasedAir(bunsen: number, saturationPressure: Pascal, pressure: Pascal, temperature: Kelvin): number {
  if (!(pressure > 0)) throw new RangeError(`Pressure is ${pressure} Pa: expected an absolute pressure above zero`);
  return (bunsen * Math.max(0, saturationPressure / pressure - 1) * temperature) / ZERO_CELSIUS;
}
