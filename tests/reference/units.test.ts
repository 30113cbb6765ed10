import { expect, test } from 'vitest';
import { STANDARD_GRAVITY, toSi, type Unit } from '@/lib/units';

// Published conversion factors; tolerance is half of the last printed digit.
test.each<[number, Unit, number, number, string]>([
  [1, 'psi', 6894.757, 5e-4, 'NIST SP 811 (2008) B.8: pound-force per square inch'],
  [1, 'inHg', 3386.389, 5e-4, 'NIST SP 811 (2008) B.8: inch of mercury, conventional'],
  [1, 'bar', 1e5, 0, 'exact, SI brochure table 8'],
  [14.695949, 'psi', 101325, 4e-3, 'standard atmosphere, exact in Pa; psi printed to eight figures'],
  [29.9213, 'inHg', 101325, 0.2, 'standard atmosphere in conventional inches of mercury, six figures'],
  [1, 'L/min', 1.666667e-5, 5e-12, 'NIST SP 811 (2008) B.8: litre per minute'],
  [1, 'US gal/min', 6.30902e-5, 5e-12, 'NIST SP 811 (2008) B.8: gallon (U.S.) per minute'],
  [1, 'US gal', 3.785412e-3, 5e-10, 'NIST SP 811 (2008) B.8: gallon (U.S.)'],
  [1, 'L', 1e-3, 0, 'exact, SI brochure table 8'],
  [1, 'mL', 1e-6, 0, 'exact, SI brochure table 8'],
  [1, 'L/h', 2.777778e-7, 5e-14, 'a litre over an hour of 3,600 s, exact'],
  [60, 'rpm', 1, 1e-12, 'a revolution per second, from memory'],
  [1, 'mm²/s', 1e-6, 0, 'NIST SP 811 (2008) B.8: centistokes'],
  [32, '°F', 273.15, 1e-9, 'NIST SP 811 (2008) B.8: (t/°F + 459.67)/1.8, exact'],
  [-459.67, '°F', 0, 1e-9, 'NIST SP 811 (2008) B.8, exact'],
  [100, '°C', 373.15, 0, 'exact by definition'],
])('%d %s is %d in SI', (value, unit, si, tolerance) => {
  expect(Math.abs(toSi(value, unit) - si)).toBeLessThanOrEqual(tolerance);
});

test('standard gravity is what the third general conference declared', () => {
  expect(STANDARD_GRAVITY).toBe(9.80665);
});
