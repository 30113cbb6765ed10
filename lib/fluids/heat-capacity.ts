import { type Kelvin, type KilogramPerCubicMetre, ZERO_CELSIUS } from '../units';
import { densityAt, SIXTY_FAHRENHEIT } from './density';

const WATER_AT_60_FAHRENHEIT: KilogramPerCubicMetre = 999.016;

/**
 * Specific heat capacity of a petroleum liquid at ambient pressure, J/(kg·K).
 *
 * c = (1685 + 3.4·t)/√s, t in °C, s the specific gravity at 60 °F. Pressure changes it by less than 2 % up to 200 MPa.
 * Range: s 0.75–0.96, 0–200 °C, to about 4 %; the line is carried on below 0 °C.
 *
 * @source Cragoe, Thermal Properties of Petroleum Products, NBS Misc. Publ. 97 (1929), "Specific heat of petroleum
 * oils"; equation, range and accuracy from memory. Its customary form, (0.388 + 0.00045·t°F)/√s Btu/(lb·°F), stands in
 * Brill & Mukherjee, Multiphase Flow in Wells (1999), p. 122, as quoted in public code.
 */
export function heatCapacity(density15: KilogramPerCubicMetre, temperature: Kelvin): number {
  const specificGravity = densityAt(density15, SIXTY_FAHRENHEIT) / WATER_AT_60_FAHRENHEIT;
  return (1685 + 3.4 * (temperature - ZERO_CELSIUS)) / Math.sqrt(specificGravity);
}
