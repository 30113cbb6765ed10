import type { Kelvin, Metre } from '../units';

/** What a case finds before anything breaks. */
export interface Setting {
  airTemperature: Kelvin;
  altitude: Metre;
  /** Id of the fuel. */
  fuel: string;
  /** 0 new … 1 due for change. */
  supplyFilterAge: number;
  mainFilterAge: number;
  /** 0 empty … 1 full. */
  tankLevel: number;
  /** Since the engine last ran. */
  hoursStanding: number;
  /** The cylinder that a fault of a single cylinder sits in, counted from 1. */
  cylinder: number;
}
