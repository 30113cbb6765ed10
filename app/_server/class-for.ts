import { revalidatePath } from 'next/cache';
import type { ActResult } from '@/app/_ui/act-result';
import { type Class, findClass } from '@/db/queries/classes';
import { addingLogEntry } from '@/db/queries/log-entries';
import { type Statement, together } from '@/db/together';
import type { LogEvent } from '@/lib/accounts/log-events';
import { database } from './database';
import { entryBy } from './log-entry';
import type { Permit } from './permit';

/** The class that a form names, which the door has found already. @throws when it is gone since. */
export async function classFor(form: unknown): Promise<Class> {
  const id = form instanceof FormData ? form.get('classId') : undefined;
  const found = typeof id === 'string' ? await findClass(database(), id) : undefined;
  if (!found) throw new Error('The class that the door let in to is gone');
  return found;
}

/** Changes a class, and tells the log of it. */
export async function logged(
  permit: Permit,
  event: LogEvent,
  classId: string,
  statements: readonly Statement[],
  personId: string | null = null,
): Promise<ActResult> {
  const entry = entryBy(permit, event, { personId, details: { class: classId } });
  await together(database(), [...statements, addingLogEntry(database(), entry)]);
  revalidatePath(`/classes/${classId}`);
  return { done: true };
}
