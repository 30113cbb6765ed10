import { and, desc, eq, gt, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { classes, invitations, organizations } from '../schema';
import type { Statement } from '../together';

export type Invitation = typeof invitations.$inferSelect;

/** An invitation, whoever's it is: the door compares its organisation. Undefined when there is none. */
export async function findInvitation(db: Db, invitationId: string): Promise<Invitation | undefined> {
  const [row] = await db.select().from(invitations).where(eq(invitations.id, invitationId));
  return row;
}

/** An invitation that still lets somebody in, and to what. */
export interface OpenInvitation {
  id: string;
  organizationId: string;
  organizationName: string;
  slug: string;
  role: string;
  classId: string | null;
  email: string | null;
}

/** The invitation whose link has a hash; undefined when it was used or withdrawn, has ended, or never was. */
export async function findOpenInvitation(db: Db, tokenHash: string, now: Date): Promise<OpenInvitation | undefined> {
  const [row] = await db
    .select({
      id: invitations.id,
      organizationId: invitations.organizationId,
      organizationName: organizations.name,
      slug: organizations.slug,
      role: invitations.role,
      classId: invitations.classId,
      email: invitations.email,
    })
    .from(invitations)
    .innerJoin(organizations, eq(organizations.id, invitations.organizationId))
    .where(
      and(eq(invitations.tokenHash, tokenHash), eq(invitations.status, 'pending'), gt(invitations.expiresAt, now)),
    );
  return row;
}

/** Uses an invitation up and forgets where it was sent; changes nothing when it is not open any more. */
export function acceptingInvitation(db: Db, invitationId: string, now: Date): Statement {
  return db
    .update(invitations)
    .set({ status: 'accepted', email: null })
    .where(and(eq(invitations.id, invitationId), eq(invitations.status, 'pending'), gt(invitations.expiresAt, now)));
}

export function addingInvitation(db: Db, invitation: Invitation): Statement {
  return db.insert(invitations).values(invitation);
}

/** Takes back whatever invitations of an organisation are open, and forgets where they were sent. */
export function withdrawingInvitations(db: Db, organizationId: string): Statement {
  return db
    .update(invitations)
    .set({ status: 'withdrawn', email: null })
    .where(and(eq(invitations.organizationId, organizationId), eq(invitations.status, 'pending')));
}

export interface InvitationLine {
  id: string;
  role: string;
  email: string | null;
  className: string | null;
  expiresAt: Date;
}

/** Invitations that still let somebody in, the newest first. */
export async function listOpenInvitations(
  db: Db,
  organizationId: string,
  now: Date,
  limit: number,
): Promise<InvitationLine[]> {
  return db
    .select({
      id: invitations.id,
      role: invitations.role,
      email: invitations.email,
      className: classes.name,
      expiresAt: invitations.expiresAt,
    })
    .from(invitations)
    .leftJoin(classes, eq(classes.id, invitations.classId))
    .where(
      and(
        eq(invitations.organizationId, organizationId),
        eq(invitations.status, 'pending'),
        sql`${invitations.expiresAt} > ${sql.param(now, invitations.expiresAt)}`,
      ),
    )
    .orderBy(desc(invitations.createdAt), desc(invitations.id))
    .limit(limit);
}

/** Takes an invitation of an organisation back, and forgets where it was sent; nothing happens when it is not open any more. */
export function withdrawingInvitation(
  db: Db,
  { organizationId, invitationId }: { organizationId: string; invitationId: string },
): Statement {
  const own = and(eq(invitations.id, invitationId), eq(invitations.organizationId, organizationId));
  return db
    .update(invitations)
    .set({ status: 'withdrawn', email: null })
    .where(and(own, eq(invitations.status, 'pending')));
}
