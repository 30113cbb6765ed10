'use server';

import { redirect } from 'next/navigation';
import { z } from 'zod';
import { logRefusal } from '@/app/_server/entering/log-refusal';
import { safeNext } from '@/app/_server/entering/safe-next';
import { signInAs } from '@/app/_server/entering/sign-in-as';
import { action } from '@/app/_server/guard';
import { problem, problemWithFields } from '@/app/_server/problems';
import { countTry, forgetTries } from '@/app/_server/slow-down';
import type { ActResult } from '@/app/_ui/act-result';
import { storedAddress } from '@/lib/accounts/sign-in-name';

const schema = z.object({
  signInName: z.string().trim().min(1).max(200),
  secret: z.string().min(1).max(200),
  next: z.string().optional(),
});

/** Signs somebody in. What is wrong, the name or the secret, is not told. */
export const signIn = action('signIn', async (_, form): Promise<ActResult> => {
  const parsed = schema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success)
    return { error: await problemWithFields(parsed.error.issues.map(({ path }) => String(path[0]))) };
  const { signInName, secret, next } = parsed.data;
  const address = storedAddress(signInName);
  const minutes = await countTry(`name:${address}`);
  if (minutes !== undefined) return { error: await problem('sign-in-wait', { minutes }) };
  const personId = await signInAs(address, secret);
  if (!personId) {
    await logRefusal(address);
    return { error: await problem('sign-in-refused') };
  }
  await forgetTries(`name:${address}`);
  redirect(safeNext(next));
});
