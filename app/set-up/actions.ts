'use server';

import { redirect } from 'next/navigation';
import { z } from 'zod';
import { newcomerFrom, newcomerSchema } from '@/app/_server/entering/newcomer';
import { setUpInstallation } from '@/app/_server/entering/set-up-installation';
import { signInAs } from '@/app/_server/entering/sign-in-as';
import { action } from '@/app/_server/guard';
import { problem, problemWithFields } from '@/app/_server/problems';
import { isSetUpToken } from '@/app/_server/set-up-token';
import { countTry, forgetTries } from '@/app/_server/slow-down';
import type { ActResult } from '@/app/_ui/act-result';
import { isShortName } from '@/lib/accounts/sign-in-name';

const schema = newcomerSchema.extend({
  token: z.string().trim().min(1).max(200),
  organization: z.string().trim().min(1).max(80),
  slug: z.string().trim().toLowerCase().min(1).max(40),
});

/** Makes the first organisation and its administrator, once, for whoever has read the token off the console. */
export const setUp = action('setUp', async (_, form): Promise<ActResult> => {
  const parsed = schema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success)
    return { error: await problemWithFields(parsed.error.issues.map(({ path }) => String(path[0]))) };
  const { token, organization, slug } = parsed.data;
  const minutes = await countTry('set-up');
  if (minutes !== undefined) return { error: await problem('tries-wait', { minutes }) };
  if (!isSetUpToken(token)) return { error: await problem('set-up-token') };
  await forgetTries('set-up');
  if (!isShortName(slug)) return { error: await problem('short-name') };
  const read = newcomerFrom(parsed.data, slug);
  if ('error' in read) return { error: await problem(read.error) };
  const made = await setUpInstallation(read.newcomer, { name: organization, slug });
  if (!made) return { error: await problem('set-up-done') };
  await signInAs(read.newcomer.address, read.newcomer.secret);
  redirect('/people');
});
