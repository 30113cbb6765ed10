'use server';

import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import { decideOn } from '@/app/_server/applications/decide-on';
import { idFromKey } from '@/app/_server/classes/id-from-key';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { deskOf } from '@/app/_server/permit';
import { problem } from '@/app/_server/problems';
import { findScheme } from '@/app/_server/schemes';
import type { ActResult } from '@/app/_ui/act-result';
import { addingApplication, endingApplication, findApplication, listApplicationsOf } from '@/db/queries/applications';
import { addingLogEntry } from '@/db/queries/log-entries';
import { claimThen } from '@/db/together';
import { mayApply } from '@/lib/readiness/may-apply';

const applied = z.object({ key: z.string().regex(/^[0-9a-f-]{16,64}$/i), schemeId: z.string().min(1).max(80) });
const named = z.object({ applicationId: z.string().min(1).max(80) });

/** Applies for a certificate, under the rules as they stand now. */
export const applyFor = action('applyFor', async (permit, form): Promise<ActResult> => {
  const parsed = applied.safeParse(fieldsOf(form));
  const { learnerId, organizationId } = deskOf(permit);
  const scheme = parsed.success ? await findScheme(database(), organizationId, parsed.data.schemeId) : undefined;
  if (!parsed.success || !scheme) return { error: await problem('application-unknown') };
  const earlier = await listApplicationsOf(database(), { learnerId, organizationId, schemeId: scheme.id });
  const at = new Date();
  const times = earlier.map(({ state, appliedAt, decidedAt }) => ({
    ...{ state, appliedAt: appliedAt.getTime(), decidedAt: decidedAt?.getTime() ?? null },
  }));
  const may = mayApply(scheme, times, at.getTime());
  if (may.code !== 'yes') return { error: await problem(`application-${may.code}`) };
  const id = idFromKey(permit, parsed.data.key);
  const row = { id, organizationId, learnerId, schemeId: scheme.id, scheme, appliedAt: at };
  const entry = entryBy(permit, 'application-made', { details: { scheme: scheme.id, version: scheme.version } });
  const made = await claimThen(database(), addingApplication(database(), row), [addingLogEntry(database(), entry)]);
  revalidatePath('/schemes', 'layout');
  return made ? { done: true } : { error: await problem('application-open') };
});

/** Takes one's own application back while it is open; it then counts for nothing. */
export const withdrawApplication = action('withdrawApplication', async (permit, form): Promise<ActResult> => {
  const parsed = named.safeParse(fieldsOf(form));
  const { organizationId } = deskOf(permit);
  const found = parsed.success && (await findApplication(database(), organizationId, parsed.data.applicationId));
  if (!found) return { error: await problem('not-there') };
  const end = { state: 'withdrawn', decidedBy: null, decidedAt: new Date(), reason: null } as const;
  const entry = entryBy(permit, 'application-withdrawn', { details: { application: found.id } });
  const ending = endingApplication(database(), { id: found.id, ...end });
  const done = await claimThen(database(), ending, [addingLogEntry(database(), entry)]);
  revalidatePath('/schemes', 'layout');
  return done ? { done: true } : { error: await problem('application-decided') };
});

/** Decides on an application as its evidence says, by somebody who had no part in it. */
export const decideApplication = action('decideApplication', async (permit, form): Promise<ActResult> => {
  const parsed = named
    .extend({
      verdict: z.enum(['granted', 'refused']),
      reason: z.string().trim().min(1).max(1000),
      safe: z.literal('on'),
      impartial: z.literal('on'),
    })
    .safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('application-incomplete') };
  const refused = await decideOn(permit, parsed.data);
  if (refused) return { error: await problem(refused) };
  revalidatePath('/schemes', 'layout');
  return { done: true };
});

function fieldsOf(form: unknown): Record<string, unknown> {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
