'use server';

import { redirect } from 'next/navigation';
import { resetSecret } from '@/app/_server/entering/reset-secret';
import { action } from '@/app/_server/guard';
import { problem } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';

/** Sets a password or PIN anew, once by each link. */
export const setNewPassword = action('setNewPassword', async (_, form): Promise<ActResult> => {
  const token = form instanceof FormData ? form.get('token') : undefined;
  const secret = form instanceof FormData ? form.get('secret') : undefined;
  if (typeof token !== 'string' || typeof secret !== 'string') return { error: await problem('link-dead') };
  const failed = await resetSecret(token, secret);
  if (failed) return { error: await problem(failed) };
  redirect('/sign-in?done=new-secret');
});
