import { z } from 'zod';
import { idSchema, sourceSchema } from '../source';

/** A grade of fuel as content gives it: a density and two viscosities pin the published correlations. */
export const fuelSchema = z.strictObject({
  id: idSchema,
  /** Density at 15 °C, kg/m³. */
  density15: z.number().min(770.5).max(900),
  /** Kinematic viscosity at 40 °C and 100 °C, mm²/s. */
  viscosity40: z.number().positive(),
  viscosity100: z.number().positive(),
  source: sourceSchema,
  text: z.strictObject({ en: z.string() }),
});

export type Fuel = z.infer<typeof fuelSchema>;
