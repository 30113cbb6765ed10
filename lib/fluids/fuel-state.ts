import type { Fluid } from '../hydraulics/elements/element';
import type { Kelvin, KilogramPerCubicMetre, Pascal, SquareMetrePerSecond } from '../units';
import { densityAt } from './density';
import type { Fuel } from './fuel';
import { vapourPressure } from './vapour-pressure';
import { kinematicViscosity, type WaltherCoefficients, walther } from './viscosity';

/** A fuel whose correlations have been fitted to its measured points, ready to be asked at any temperature. */
export interface FittedFuel {
  density15: KilogramPerCubicMetre;
  viscosity: WaltherCoefficients;
}

export interface FuelState extends Fluid {
  vapourPressure: Pascal;
}

const MM2_PER_SECOND: SquareMetrePerSecond = 1e-6;

const fitted = new WeakMap<Fuel, FittedFuel>();

/** A fuel's correlations, fitted when it is first asked for and kept as long as the fuel is. */
export function fittedFuel(fuel: Fuel): FittedFuel {
  const known = fitted.get(fuel) ?? fitFuel(fuel);
  fitted.set(fuel, known);
  return known;
}

export function fitFuel({ density15, viscosity40, viscosity100 }: Fuel): FittedFuel {
  return { density15, viscosity: walther(viscosity40 * MM2_PER_SECOND, viscosity100 * MM2_PER_SECOND) };
}

/** What the elements see of a fuel at one temperature, at ambient pressure. Range: that of its correlations. */
export function fuelState({ density15, viscosity }: FittedFuel, temperature: Kelvin): FuelState {
  const density = densityAt(density15, temperature);
  return {
    density,
    viscosity: density * kinematicViscosity(viscosity, temperature),
    vapourPressure: vapourPressure(temperature),
  };
}
