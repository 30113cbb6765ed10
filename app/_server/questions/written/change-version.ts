import { revalidatePath } from 'next/cache';
import type { ActResult } from '@/app/_ui/act-result';
import { addingLogEntry } from '@/db/queries/log-entries';
import type { VersionAct } from '@/db/queries/written-questions';
import { claimThen, type Statement } from '@/db/together';
import type { LogEvent } from '@/lib/accounts/log-events';
import { database } from '../../database';
import { entryBy } from '../../log-entry';
import type { SignedInPermit } from '../../permit';
import { problem } from '../../problems';

/** Does something to a version of a question and tells the log of it. Where the first statement changes nothing, nothing happens. */
export async function changeVersion(
  permit: SignedInPermit,
  event: LogEvent,
  { questionId, versionId }: VersionAct,
  [claim, ...others]: readonly [Statement, ...Statement[]],
): Promise<ActResult> {
  const entry = entryBy(permit, event, { details: { question: questionId, version: versionId } });
  const changed = await claimThen(database(), claim, [...others, addingLogEntry(database(), entry)]);
  revalidatePath(`/questions/${questionId}`);
  return changed ? { done: true } : { error: await problem('question-moved') };
}
