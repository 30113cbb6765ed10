import { findIntake, type Intake, listOwnIntakes } from '@/db/queries/intakes';
import { database } from '../database';
import type { Desk } from '../permit';
import { finishOverdueIntakes } from './finish-intake';

/** Somebody's own new-hire check as it stands now, finished where its time is over; undefined when it is missing or someone else's. */
export async function readOwnIntake(desk: Desk, intakeId: string, now: Date): Promise<Intake | undefined> {
  await finishOverdueIntakes(desk, now);
  const intake = await findIntake(database(), desk.organizationId, intakeId);
  return intake?.learnerId === desk.learnerId ? intake : undefined;
}

/** Somebody's own that are under way or finished, the newest first; finished where their time is over. */
export async function readOwnIntakes(desk: Desk, now: Date): Promise<Intake[]> {
  await finishOverdueIntakes(desk, now);
  return (await listOwnIntakes(database(), desk)).filter(({ startedAt }) => startedAt !== null);
}
