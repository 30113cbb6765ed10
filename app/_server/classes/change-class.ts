import { revalidatePath } from 'next/cache';
import type { ActResult } from '@/app/_ui/act-result';
import { type Class, findClass } from '@/db/queries/classes';
import { addingLogEntry } from '@/db/queries/log-entries';
import { claimThen, type Statement } from '@/db/together';
import type { LogEvent } from '@/lib/accounts/log-events';
import { database } from '../database';
import { entryBy } from '../log-entry';
import type { Permit } from '../permit';

/** The class that a form names, which the door has found already. @throws when it is gone since. */
export async function classFor(form: unknown): Promise<Class> {
  const id = form instanceof FormData ? form.get('classId') : undefined;
  const found = typeof id === 'string' ? await findClass(database(), id) : undefined;
  if (!found) throw new Error('The class that the door let in to is gone');
  return found;
}

/** What happens to a class, and to whom in it. */
export interface ClassChange {
  event: LogEvent;
  classId: string;
  personId?: string;
  change: Statement;
}

/** Changes a class and tells the log of it; where there was nothing left to change, the log is not told. */
export async function changeClass(
  permit: Permit,
  { event, classId, personId, change }: ClassChange,
): Promise<ActResult> {
  const entry = entryBy(permit, event, { personId: personId ?? null, details: { class: classId } });
  await claimThen(database(), change, [addingLogEntry(database(), entry)]);
  revalidatePath(`/classes/${classId}`);
  return { done: true };
}
