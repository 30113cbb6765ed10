import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import type { ActResult } from '@/app/_ui/act-result';
import { addingLogEntry } from '@/db/queries/log-entries';
import type { TakenBack } from '@/db/queries/observations';
import { claimThen, type Statement } from '@/db/together';
import type { LogDetails, LogEvent } from '@/lib/accounts/log-events';
import { database } from '../database';
import { entryBy } from '../log-entry';
import type { SignedInPermit } from '../permit';
import { problem } from '../problems';

const reasoned = z.object({ reason: z.string().trim().min(1).max(500) });

/** What is taken back, and what goes with it. */
export interface Taking {
  event: LogEvent;
  learnerId: string;
  details: LogDetails;
  taking: (taken: TakenBack) => Statement;
  /** Stands or falls with it. */
  others?: readonly Statement[];
  /** Done once it stands. */
  afterwards?: () => Promise<void>;
}

/** Takes something back once, with the reason that a form gives, and tells the log. */
export async function takeBack(permit: SignedInPermit, form: unknown, what: Taking): Promise<ActResult> {
  const parsed = reasoned.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problem('reason-needed') };
  const { event, learnerId, details, taking, others = [], afterwards } = what;
  const taken = { by: permit.session.actor.personId, at: new Date(), ...parsed.data };
  const entry = entryBy(permit, event, { personId: learnerId, details });
  const done = await claimThen(database(), taking(taken), [...others, addingLogEntry(database(), entry)]);
  if (!done) return { error: await problem('taken-back') };
  await afterwards?.();
  revalidatePath('/readiness', 'layout');
  return { done: true };
}
