import { findIntakeByToken, type Intake } from '@/db/queries/intakes';
import { database } from '../database';
import { hashToken } from '../link-token';

/** What a link to a new-hire check leads to: one that can be begun or gone on with, one that has ended, or nothing any more. */
export type LinkedIntake = { intake: Intake } | 'dead' | 'ended' | 'finished';

export async function readLink(token: string, now: Date): Promise<LinkedIntake> {
  const intake = await findIntakeByToken(database(), hashToken(token));
  if (!intake) return 'dead';
  if (intake.finishedAt) return 'finished';
  return intake.linkEndsAt <= now ? 'ended' : { intake };
}
