import { z } from 'zod';
import { idSchema, sourceSchema } from '../source';

/** A grade of fuel as content gives it: a density and two viscosities pin the published correlations. */
export const fuelSchema = z
  .strictObject({
    id: idSchema,
    /** Density at 15 °C, kg/m³. */
    density15: z.number().min(770.5).max(900),
    /** Kinematic viscosity at 40 °C and 100 °C, mm²/s. */
    viscosity40: z.number().positive(),
    viscosity100: z.number().positive(),
    /** Where the first wax crystals show. */
    cloudPointC: z.number().min(-60).max(20),
    /** Cold filter plugging point. */
    filterabilityC: z.number().min(-60).max(20),
    flashPointC: z.number().min(30).max(200),
    source: sourceSchema,
    text: z.strictObject({ en: z.string() }),
  })
  .refine(({ cloudPointC, filterabilityC }) => filterabilityC <= cloudPointC, {
    path: ['filterabilityC'],
    error: 'expected a cold filter plugging point at or below cloudPointC: wax plugs no filter before it is there',
  })
  .refine(({ viscosity40, viscosity100 }) => viscosity100 < viscosity40, {
    path: ['viscosity100'],
    error: 'expected a viscosity below viscosity40: fuel thins with heat',
  });

export type Fuel = z.infer<typeof fuelSchema>;
