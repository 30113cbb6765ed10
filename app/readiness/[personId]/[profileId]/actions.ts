'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { idFromKey } from '@/app/_server/classes/id-from-key';
import { database } from '@/app/_server/database';
import { settleSoon } from '@/app/_server/evidence/settle';
import { action } from '@/app/_server/guard';
import { problem } from '@/app/_server/problems';
import { parseObservation } from '@/app/_server/readiness/parse-observation';
import { readReport } from '@/app/_server/readiness/read-report';
import { storeObservation } from '@/app/_server/readiness/store-observation';
import { endOfSignOff, storeSignOff } from '@/app/_server/readiness/store-sign-off';
import { takeBack } from '@/app/_server/readiness/take-back';
import type { ActResult } from '@/app/_ui/act-result';
import { findObservation, takingBackObservation } from '@/db/queries/observations';
import { findSignOff, takingBackSignOff } from '@/db/queries/sign-offs';

const key = z.string().regex(/^[0-9a-f-]{16,64}$/i);
const checked = z.object({ profileId: z.string().min(1).max(80), key });
const signed = checked.extend({
  version: z.coerce.number().int().min(1),
  comment: z.string().trim().min(1).max(1000),
  confirmed: z.literal('yes'),
});

/** Writes down what somebody was seen doing, once however often it is sent; it becomes evidence. */
export const writeObservation = action('writeObservation', async (permit, form): Promise<ActResult> => {
  const parsed = checked.safeParse(fieldsOf(form));
  if (!parsed.success || !(form instanceof FormData)) return { error: await problem('observation-incomplete') };
  const report = await readReport(permit, parsed.data.profileId, new Date());
  if (!report) return { error: await problem('not-there') };
  const { person, profile, settings } = report;
  if (person.userId === permit.session.actor.personId) return { error: await problem('observation-oneself') };
  const observed = parseObservation(form, profile, { timeZone: settings.timeZone, now: report.at });
  if ('problem' in observed) return { error: await problem(observed.problem) };
  await storeObservation(permit, { id: idFromKey(permit, parsed.data.key), person, profile, observed });
  revalidatePath('/readiness');
  redirect(`/readiness/${person.userId}/${profile.id}`);
});

/** Takes back what was written down wrongly, with a reason. What it told as evidence counts no more. */
export const takeBackObservation = action('takeBackObservation', async (permit, form): Promise<ActResult> => {
  const { observationId } = fieldsOf(form);
  const found = typeof observationId === 'string' ? await findObservation(database(), observationId) : undefined;
  if (!found) return { error: await problem('not-there') };
  if (found.learnerId === permit.session.actor.personId) return { error: await problem('observation-oneself') };
  return takeBack(permit, form, {
    event: 'observation-taken-back',
    learnerId: found.learnerId,
    details: { observation: found.id },
    taking: (taken) => takingBackObservation(database(), found.id, taken),
    afterwards: () => settleSoon(database(), found),
  });
});

/** Signs somebody off for a role: only where the evidence says ready and nothing stands in the way, and with a name. */
export const signOff = action('signOff', async (permit, form): Promise<ActResult> => {
  const parsed = signed.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('sign-incomplete') };
  const { profileId, version, comment } = parsed.data;
  const report = await readReport(permit, profileId, new Date());
  if (!report) return { error: await problem('not-there') };
  if (report.profile.version !== version) return { error: await problem('sign-moved') };
  if (report.obstacles.length > 0) return { error: await problem('sign-obstacles') };
  const id = idFromKey(permit, parsed.data.key);
  await storeSignOff(permit, { id, report, comment, endsAt: endOfSignOff(report) });
  revalidatePath('/readiness');
  revalidatePath(`/readiness/${report.person.userId}/${profileId}`);
  return { done: true };
});

/** Takes a sign-off back, with a reason. */
export const takeBackSignOff = action('takeBackSignOff', async (permit, form): Promise<ActResult> => {
  const { signOffId } = fieldsOf(form);
  const found = typeof signOffId === 'string' ? await findSignOff(database(), signOffId) : undefined;
  if (!found) return { error: await problem('not-there') };
  return takeBack(permit, form, {
    event: 'sign-off-taken-back',
    learnerId: found.learnerId,
    details: { signOff: found.id, profile: found.profileId },
    taking: (taken) => takingBackSignOff(database(), found.id, taken),
  });
});

function fieldsOf(form: unknown): Record<string, unknown> {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
