'use server';

import { redirect } from 'next/navigation';
import { letIn } from '@/app/_server/entering/let-in';
import { entryByInvitation, readInvitation } from '@/app/_server/entering/read-invitation';
import { action } from '@/app/_server/guard';
import { problem } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';

/** Takes an invitation up, once. */
export const acceptInvitation = action('acceptInvitation', async ({ session }, form): Promise<ActResult> => {
  const token = form instanceof FormData ? form.get('token') : undefined;
  const invitation = typeof token === 'string' ? await readInvitation(token) : undefined;
  if (!invitation) return { error: await problem('link-dead') };
  const problems = await letIn(session, form, entryByInvitation(invitation), invitation.slug);
  if (problems) return problems;
  redirect('/learn');
});
