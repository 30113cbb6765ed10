'use server';

import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import { changeStatus } from '@/app/_server/certificates/change-status';
import { action } from '@/app/_server/guard';
import { problem, problemWithFields } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';

const changed = z.object({
  certificateId: z.string(),
  act: z.enum(['suspended', 'lifted', 'revoked']),
  reason: z.string().trim().min(1).max(300),
});

/** Suspends a certificate, lifts its suspension or revokes it, with a reason that whoever checks it is told. */
export const changeCertificate = action('changeCertificate', async (permit, form): Promise<ActResult> => {
  const parsed = changed.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problemWithFields(['reason']) };
  const prevented = await changeStatus(permit, parsed.data);
  if (prevented) return { error: await problem(prevented) };
  revalidatePath('/certificates', 'layout');
  return { done: true };
});
