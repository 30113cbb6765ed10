import type { Fluid } from '../hydraulics/elements/element';
import type { Kelvin, KilogramPerCubicMetre, Pascal, SquareMetrePerSecond } from '../units';
import { STANDARD_PRESSURE } from './atmosphere';
import { bulkModulus } from './bulk-modulus';
import { densityAt, expansionAt } from './density';
import type { Fuel } from './fuel';
import { heatCapacity } from './heat-capacity';
import { vapourPressure } from './vapour-pressure';
import { kinematicViscosity, type WaltherCoefficients, walther } from './viscosity';

/** A fuel whose correlations have been fitted to its measured points, ready to be asked at any temperature. */
export interface FittedFuel {
  density15: KilogramPerCubicMetre;
  viscosity: WaltherCoefficients;
}

export interface FuelState extends Fluid {
  vapourPressure: Pascal;
  /** J/(kg·K) */
  heatCapacity: number;
  /** Thermal expansion −(1/ρ)·dρ/dT, 1/K. */
  expansion: number;
  /** Isothermal tangent bulk modulus, free of gas. */
  modulus: Pascal;
}

/** How a fuel behaves in the cold has no part in its correlations. */
type FlowingFuel = Omit<Fuel, 'cloudPointC' | 'filterabilityC' | 'flashPointC'>;

const MM2_PER_SECOND: SquareMetrePerSecond = 1e-6;

const fitted = new WeakMap<Fuel, FittedFuel>();

/** A fuel's correlations, fitted when it is first asked for and kept as long as the fuel is. */
export function fittedFuel(fuel: Fuel): FittedFuel {
  const known = fitted.get(fuel) ?? fitFuel(fuel);
  fitted.set(fuel, known);
  return known;
}

export function fitFuel({ density15, viscosity40, viscosity100 }: FlowingFuel): FittedFuel {
  return { density15, viscosity: walther(viscosity40 * MM2_PER_SECOND, viscosity100 * MM2_PER_SECOND) };
}

/** What the elements see of a fuel at one temperature, at ambient pressure. Range: that of its correlations. */
export function fuelState({ density15, viscosity }: FittedFuel, temperature: Kelvin): FuelState {
  const density = densityAt(density15, temperature);
  return {
    density,
    viscosity: density * kinematicViscosity(viscosity, temperature),
    vapourPressure: vapourPressure(temperature),
    heatCapacity: heatCapacity(density15, temperature),
    expansion: expansionAt(density15, temperature),
    modulus: bulkModulus(density15, temperature, STANDARD_PRESSURE),
  };
}
