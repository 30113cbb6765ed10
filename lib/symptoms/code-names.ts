import { z } from 'zod';
import { sourceSchema } from '../source';

/** What the open standard calls suspect parameters and failure modes, by number. */
export const codeNamesSchema = z.strictObject({
  id: z.literal('j1939'),
  spn: z.record(z.string().regex(/^\d+$/), z.string()),
  fmi: z.record(z.string().regex(/^\d+$/), z.string()),
  source: sourceSchema,
});

export type CodeNames = z.infer<typeof codeNamesSchema>;
