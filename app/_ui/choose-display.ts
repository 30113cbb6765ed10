'use server';

import { cookies } from 'next/headers';
import { z } from 'zod';
import { action } from '@/app/_server/guard';
import { themes, unitChoices } from './display-choices';

const choiceSchema = z.union([
  z.strictObject({ units: z.enum(unitChoices) }),
  z.strictObject({ theme: z.enum(themes) }),
]);

/** Remembers a choice of units or theme for a year. A choice that does not exist is dropped. */
export const chooseDisplay = action('chooseDisplay', async (_, choice): Promise<void> => {
  const parsed = choiceSchema.safeParse(choice);
  if (!parsed.success) return;
  const jar = await cookies();
  for (const [name, value] of Object.entries(parsed.data))
    jar.set(name, value, { path: '/', maxAge: 31_536_000, sameSite: 'lax', httpOnly: true });
});
