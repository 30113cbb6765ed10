import { type Kelvin, type KilogramPerCubicMetre, type Pascal, units, ZERO_CELSIUS } from '../units';
import { STANDARD_PRESSURE } from './atmosphere';
import { densityAt, SIXTY_FAHRENHEIT } from './density';

/**
 * dK/dp of the liquid. Assumed: the compressibility table fixes none; n-dodecane has 9 to 11 between 0.1 and 200 MPa
 * (Lemmon & Huber 2004), and liquids in general are close to 10.
 */
export const PRESSURE_SLOPE = 10;

/**
 * Isothermal tangent bulk modulus K = ρ·dp/dρ of fuel without free gas.
 *
 * K = K0 + 10·(p − 101.325 kPa), K0 = 1/F with the compressibility factor
 * F = 1e-5·exp(−1.9947 + 0.00013427·t + (793920 + 2326·t)/ρ60²) per psi, t in °F, ρ60 in kg/m³ at 60 °F.
 *
 * The standard defines F as a secant: ρ(p) = ρ0/(1 − F·p) makes 1/F the mean modulus from no gauge pressure to p. It
 * meets the tangent at p = 0, where it is used here; the table, made for up to 10 MPa, so overstates K0 by at most half
 * the rise over that span, 4 %. For pressure waves the isentropic modulus is about 1.2 times as large.
 * Range of the table: −30…90 °C, ρ15 638–1074 kg/m³; the slope holds to about 200 MPa.
 *
 * @source API MPMS 11.2.1 (1984), the factor that MPMS 11.1 (2004) takes over. Pressure slope assumed.
 */
export function bulkModulus(density15: KilogramPerCubicMetre, temperature: Kelvin, pressure: Pascal): Pascal {
  const ambient = 1 / compressibilityFactor(densityAt(density15, SIXTY_FAHRENHEIT), temperature);
  return ambient + PRESSURE_SLOPE * (pressure - STANDARD_PRESSURE);
}

/** F of MPMS 11.1, per pascal. */
export function compressibilityFactor(density60F: KilogramPerCubicMetre, temperature: Kelvin): number {
  const fahrenheit = (temperature - ZERO_CELSIUS) * 1.8 + 32;
  const perPsi =
    1e-5 * Math.exp(-1.9947 + 0.00013427 * fahrenheit + (793_920 + 2326 * fahrenheit) / (density60F * density60F));
  return perPsi / units.psi.scale;
}
