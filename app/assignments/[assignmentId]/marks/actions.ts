'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { idFromKey } from '@/app/_server/classes/id-from-key';
import { database } from '@/app/_server/database';
import { canBeMade } from '@/app/_server/gradebook/can-be-made';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { problem, problemWithFields } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingRegrade, findRegradesAssignment, undoingRegrade } from '@/db/queries/regrades';
import { claimThen } from '@/db/together';
import { changeSchema } from '@/lib/regrading/change';

const made = z.object({
  assignmentId: z.string(),
  change: z.string().max(4000),
  reason: z.string().trim().min(1).max(1000),
  key: z.string().regex(/^[0-9a-f-]{16,64}$/i),
});

/** Changes the marks of an assignment, once however often the form is sent. Acts and grades stay as they are. */
export const changeMarks = action('changeMarks', async (permit, form): Promise<ActResult> => {
  const parsed = made.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['reason']) };
  const { assignmentId, reason, key } = parsed.data;
  const change = changeSchema.safeParse(fromJson(parsed.data.change));
  if (!change.success || !(await canBeMade(assignmentId, change.data)))
    return { error: await problem('no-such-change') };
  const { personId } = permit.session.actor;
  const regrade = { assignmentId, change: change.data, reason, madeBy: personId, madeAt: new Date() };
  const { claim, others } = addingRegrade(database(), { id: idFromKey(permit, key), ...regrade });
  const details = { assignment: assignmentId };
  await claimThen(database(), claim, [
    ...others,
    addingLogEntry(database(), entryBy(permit, 'marks-changed', { details })),
  ]);
  redirect(`/assignments/${assignmentId}/marks`);
});

/** Undoes a change of marks; what turns came to is worked out as if it had never been. */
export const undoChange = action('undoChange', async (permit, form): Promise<ActResult> => {
  const id = String(fieldsOf(form).regradeId);
  const assignmentId = await findRegradesAssignment(database(), id);
  if (!assignmentId) return { error: await problem('not-there') };
  const undone = { id, assignmentId, undoneBy: permit.session.actor.personId, undoneAt: new Date() };
  const { claim, others } = undoingRegrade(database(), undone);
  const details = { assignment: assignmentId };
  await claimThen(database(), claim, [
    ...others,
    addingLogEntry(database(), entryBy(permit, 'marks-change-undone', { details })),
  ]);
  revalidatePath(`/assignments/${assignmentId}/marks`);
  return { done: true };
});

function fieldsOf(form: unknown): Record<string, unknown> {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}

function fromJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
