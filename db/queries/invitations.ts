import { eq } from 'drizzle-orm';
import type { Db } from '../client';
import { invitations } from '../schema';

export type Invitation = typeof invitations.$inferSelect;

/** An invitation, whoever's it is: the door compares its organisation. Undefined when there is none. */
export async function findInvitation(db: Db, invitationId: string): Promise<Invitation | undefined> {
  const [row] = await db.select().from(invitations).where(eq(invitations.id, invitationId));
  return row;
}
