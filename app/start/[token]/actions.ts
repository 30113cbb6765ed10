'use server';

import { redirect } from 'next/navigation';
import { z } from 'zod';
import { database } from '@/app/_server/database';
import { logRefusal } from '@/app/_server/entering/log-refusal';
import { signInAs } from '@/app/_server/entering/sign-in-as';
import { action } from '@/app/_server/guard';
import { beginIntake } from '@/app/_server/intakes/begin-intake';
import { readLink } from '@/app/_server/intakes/read-link';
import { problem, problemWithFields } from '@/app/_server/problems';
import { countTry, forgetTries } from '@/app/_server/slow-down';
import type { ActResult } from '@/app/_ui/act-result';
import { findMember } from '@/db/queries/members';
import { findUser } from '@/db/queries/users';

const schema = z.object({ token: z.string().min(1).max(200), secret: z.string().min(1).max(200) });

/** Signs the person in whose new-hire check a link leads to, and begins it, or goes on with it. */
export const startIntake = action('startIntake', async (_, form): Promise<ActResult> => {
  const parsed = schema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problemWithFields(['pin']) };
  const { token, secret } = parsed.data;
  const now = new Date();
  const linked = await readLink(token, now);
  if (typeof linked === 'string') return { error: await problem('intake-link-ended') };
  const { intake } = linked;
  const member = await findMember(database(), intake.organizationId, intake.learnerId);
  const user = await findUser(database(), intake.learnerId);
  if (!user || !member || member.deactivatedAt) return { error: await problem('intake-link-ended') };
  const minutes = await countTry(`name:${user.email}`);
  if (minutes !== undefined) return { error: await problem('sign-in-wait', { minutes }) };
  if (!(await signInAs(user.email, secret, intake.organizationId))) {
    await logRefusal(user.email);
    return { error: await problem('intake-pin-refused') };
  }
  await forgetTries(`name:${user.email}`);
  if (!intake.startedAt) await beginIntake(intake, now);
  redirect(`/learn/intakes/${intake.id}`);
});
