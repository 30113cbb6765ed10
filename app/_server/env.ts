import { z } from 'zod';

const envSchema = z.object({
  /** Folder that holds the database. */
  FAULTWRIGHT_DATA: z.string().min(1).default('./data'),
});

/** The settings this installation runs with. Parsed once; a wrong one stops the start and names itself. */
export const env = envSchema.parse({ FAULTWRIGHT_DATA: process.env.FAULTWRIGHT_DATA });
