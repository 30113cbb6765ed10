'use server';

import { redirect } from 'next/navigation';
import { z } from 'zod';
import { assignmentFor, changeAssignment, MOST_PEOPLE, movedEnds } from '@/app/_server/assignments/change-assignment';
import { storeAssignment } from '@/app/_server/assignments/give-assignment';
import { type GivenResult, wrongSentences } from '@/app/_server/assignments/given-result';
import { readAssignmentForm, readDates, type Wrongs } from '@/app/_server/assignments/read-assignment-form';
import { storeNudge } from '@/app/_server/assignments/send-nudge';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { problem, problemWithFields } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';
import { findMostExtraTime, givingExtraTime, listAssigned } from '@/db/queries/assigned-people';
import { archivingAssignment, movingDates } from '@/db/queries/assignments';
import { listTurnLines } from '@/db/queries/turn-ends';
import { forgettingResultsOf } from '@/db/queries/turn-results';
import { hurtBy } from '@/lib/assignments/date-change';
import { toldAt } from '@/lib/assignments/phase';

const keyed = z.object({ key: z.string().regex(/^[0-9a-f-]{16,64}$/i) });
const nudge = keyed.extend({ personKey: z.string().min(1).max(80), text: z.string().trim().min(1).max(200) });
const put = z.object({ put: z.enum(['away', 'back']) });
const moreTime = z.object({
  personId: z.string().min(1).max(80),
  percent: z
    .string()
    .regex(/^\d{1,3}$/)
    .transform(Number)
    .refine((percent) => percent <= 200),
});

/** Gives a set, once however often the form is sent, and goes to it. */
export const giveAssignment = action('giveAssignment', async (permit, form): Promise<GivenResult> => {
  if (!(form instanceof FormData)) return { error: await problemWithFields(['key']) };
  const parsed = keyed.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { error: await problemWithFields(['key']) };
  const read = readAssignmentForm(form, new Date());
  if ('wrong' in read) return { wrong: await wrongSentences(read.wrong) };
  const stored = await storeAssignment(permit, parsed.data.key, read.wanted);
  if ('error' in stored) return { error: await problem(stored.error) };
  redirect(`/assignments/${stored.id}`);
});

/** Moves when an assignment opens and closes, while that hurts nobody; who is at work gets the time with it. */
export const changeAssignmentDates = action('changeAssignmentDates', async (permit, form): Promise<GivenResult> => {
  const found = await assignmentFor(permit, form);
  const now = new Date();
  const wrong: Wrongs = {};
  const dates = readDates(form as FormData, now, wrong);
  if (!dates) return { wrong: await wrongSentences(wrong) };
  const { opensAt, closesAt, ...local } = dates;
  const begun = (await listTurnLines(database(), found.id)).length > 0;
  const mostExtraTime = await findMostExtraTime(database(), found.id);
  const hurt = hurtBy(found, { opensAt, closesAt }, { now, begun, mostExtraTime });
  if (hurt) return { error: await problem(`dates-${hurt}`) };
  const to = { rules: { ...found.rules, ...local }, opensAt, closesAt };
  return changeAssignment(permit, {
    event: 'assignment-changed',
    assignmentId: found.id,
    details: { changed: ['opens', 'closes'], from: found.closesAt.toISOString(), to: closesAt.toISOString() },
    claim: movingDates(database(), found, to),
    // What late work costs may be another.
    others: [...(await movedEnds(found, to, now)), forgettingResultsOf(database(), found.id)],
  });
});

/** Gives one person more minutes; a turn of theirs that goes on gets them at once. */
export const giveExtraTime = action('giveExtraTime', async (permit, form): Promise<ActResult> => {
  const parsed = moreTime.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problem('extra-time') };
  const found = await assignmentFor(permit, form);
  const { personId, percent } = parsed.data;
  const people = await listAssigned(
    database(),
    { assignmentId: found.id, organizationId: found.organizationId },
    MOST_PEOPLE,
  );
  if (!people.some(({ id }) => id === personId)) return { error: await problem('not-there') };
  const now = new Date();
  const most = await findMostExtraTime(database(), found.id);
  if (found.rules.mode === 'assessed' && now.getTime() >= toldAt(found, most))
    return { error: await problem('dates-told') };
  const extraTime = percent / 100;
  return changeAssignment(permit, {
    event: 'extra-time-given',
    assignmentId: found.id,
    personId,
    details: { to: percent },
    claim: givingExtraTime(database(), { assignmentId: found.id, userId: personId, extraTime }),
    others: [
      ...(await movedEnds(found, found, now, new Map([[personId, extraTime]]))),
      forgettingResultsOf(database(), found.id),
    ],
  });
});

/** Puts an assignment away, or takes it out again. What somebody did at it stays. */
export const archiveAssignment = action('archiveAssignment', async (permit, form): Promise<ActResult> => {
  const parsed = put.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problemWithFields(['put']) };
  const { id } = await assignmentFor(permit, form);
  const archivedAt = parsed.data.put === 'away' ? new Date() : null;
  return changeAssignment(permit, {
    event: 'assignment-archived',
    assignmentId: id,
    claim: archivingAssignment(database(), id, archivedAt),
  });
});

/** Sends a short message to somebody at work. */
export const sendNudge = action('sendNudge', async (permit, form): Promise<ActResult> => {
  const parsed = nudge.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problem('nudge-text') };
  return storeNudge(permit, await assignmentFor(permit, form), parsed.data);
});
