import { PRESSURE_SLOPE } from '../fluids/bulk-modulus';
import type { Pascal } from '../units';

/** What a store says at one pressure. The caller owns one and lends it, so that nothing is allocated. */
export interface StoredVolume {
  /** m³ at supply density, from wherever the store counts. */
  volume: number;
  /** ∂volume/∂pressure, m³/Pa, always positive. */
  perPressure: number;
}

/**
 * The volume that a node holds at a pressure (absolute), written into `result`. Strictly increasing, and smooth but for
 * a bend where a law is continued.
 */
export type Store = (pressure: Pascal, result: StoredVolume) => void;

export interface Liquid {
  /** m³ */
  volume: number;
  /** Isothermal bulk modulus at ambient pressure. */
  modulus: Pascal;
  ambient: Pascal;
}

/**
 * A volume full of liquid: the mass held over the supply density, less the volume itself.
 *
 *     S = V [(1 + n (p − p_amb)/K)^(1/n) − 1]     n = dK/dp = 10
 *
 * Below ambient pressure it goes on along its tangent V/K. Range: to about 200 MPa.
 *
 * @source Murnaghan, Proc. Natl. Acad. Sci. 30 (1944) 244 (from memory): K linear in pressure.
 */
export function liquidStore({ volume, modulus, ambient }: Liquid): Store {
  const slope = volume / modulus;
  const perModulus = PRESSURE_SLOPE / modulus;
  return (pressure, result) => {
    const above = pressure - ambient;
    if (above <= 0) {
      result.volume = slope * above;
      result.perPressure = slope;
      return;
    }
    const x = perModulus * above;
    // Not a power less 1: at a few bar that would leave ten digits of sixteen.
    const held = Math.expm1(Math.log1p(x) / PRESSURE_SLOPE);
    result.volume = volume * held;
    result.perPressure = (slope * (1 + held)) / (1 + x);
  };
}

export interface GasPocket {
  /** m³ at ambient pressure. */
  gas: number;
  ambient: Pascal;
  /** Polytropic exponent: 1 isothermal (slow), 1.4 adiabatic (fast). */
  polytropic: number;
}

/** Below this a pocket grows along its tangent: the liquid would be at its vapour pressure by then. */
const LEAST_GAS_PRESSURE: Pascal = 1000;

/**
 * Liquid that a pocket of gas makes room for as it is compressed: the ullage of a tank, air that came in on standing.
 *
 *     S = V_gas [1 − (p_amb/p)^(1/n)]
 *
 * Range: down to 1 kPa absolute, and on along the tangent below.
 *
 * @source Polytropic law of an ideal gas, p V^n constant.
 */
export function gasStore({ gas, ambient, polytropic }: GasPocket): Store {
  const exponent = 1 / polytropic;
  return (pressure, result) => {
    const at = Math.max(pressure, LEAST_GAS_PRESSURE);
    const room = gas * (polytropic === 1 ? ambient / at : (ambient / at) ** exponent);
    result.perPressure = (exponent * room) / at;
    result.volume = gas - room + result.perPressure * (pressure - at);
  };
}

/**
 * A store that takes the same volume for every pascal, such as a diaphragm on its spring.
 *
 * @param capacity  m³/Pa
 */
export function linearStore(capacity: number): Store {
  return (pressure, result) => {
    result.volume = capacity * pressure;
    result.perPressure = capacity;
  };
}

/** Stores that share a node's pressure. */
export function sumOfStores(...stores: readonly Store[]): Store {
  return (pressure, result) => {
    let volume = 0;
    let perPressure = 0;
    for (const store of stores) {
      store(pressure, result);
      volume += result.volume;
      perPressure += result.perPressure;
    }
    result.volume = volume;
    result.perPressure = perPressure;
  };
}
