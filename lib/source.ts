import { z } from 'zod';

/** Where a number in content came from. Content without one does not load. */
export const sourceSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('published'), title: z.string(), locator: z.string() }),
  z.strictObject({ kind: z.literal('common-practice'), note: z.string() }),
  z.strictObject({ kind: z.literal('assumed'), because: z.string() }),
]);

export type Source = z.infer<typeof sourceSchema>;

/** Ids are kebab-case, so that they can stand in file names, addresses and codes. */
export const idSchema = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'an id is kebab-case: lower-case letters, digits, single hyphens');

/** Ports are stamped as on the drawing: a letter and a digit. */
export const portIdSchema = z.string().regex(/^[A-Z][0-9]$/, 'a port is a capital letter and a digit');
