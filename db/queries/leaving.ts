import { and, eq, exists, inArray, notExists, or, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { acts, attempts, calls, classes, classPlaces, invitations, members, users, verifications } from '../schema';
import type { Statement } from '../together';
import { movingCompetency, partingFromCompetency, removingCompetency, renamingCompetency } from './leaving-competency';
import { movingQuestions, movingSittings, partingFromQuestions, removingSittings } from './leaving-questions';
import { movingTurns, partingFromTeaching, removingTurns, renamingTeaching } from './leaving-teaching';
import { changingRole } from './members';
import { type MemberKey, removingMember } from './people';

/** What happens when a member leaves for good: the others happen where the claim, on the member's own row, changed it. */
export interface Leaving {
  claim: Statement;
  others: Statement[];
}

/**
 * Removes all that an organisation holds of a member, and them where no other has them. The last who administers it stays.
 *
 * @param heirId  Whose the invitations that they made and the questions that they left unfinished are from now on.
 */
export function erasingMember(db: Db, member: MemberKey, heirId: string): Leaving {
  return {
    claim: removingMember(db, member),
    others: [
      ...removingCompetency(db, member),
      ...partingFromCompetency(db, member),
      ...removingTurns(db, member),
      ...partingFromTeaching(db, member, heirId),
      ...removingWork(db, member),
      ...removingSittings(db, member),
      ...partingFromQuestions(db, member, heirId),
      removingPlaces(db, member),
      handingInvitations(db, member, heirId),
      ...removingPersonOfNobody(db, member),
    ],
  };
}

/**
 * Gives all that an organisation holds of a double to the one who is kept, who is what `role` says from now on. The double
 * is removed where no other organisation has them. The last who administers the organisation is nobody's double.
 */
export function mergingMembers(
  db: Db,
  {
    organizationId,
    keptId,
    doubleId,
    role,
  }: { organizationId: string; keptId: string; doubleId: string; role: string },
): Leaving {
  const double = { organizationId, userId: doubleId };
  return {
    claim: removingMember(db, double),
    others: [
      changingRole(db, { organizationId, userId: keptId, role }),
      ...movingWork(db, double, keptId),
      movingSittings(db, double, keptId),
      ...movingQuestions(db, double, keptId),
      ...movingTurns(db, double, keptId),
      ...renamingTeaching(db, double, keptId),
      ...movingCompetency(db, double, keptId),
      ...renamingCompetency(db, double, keptId),
      handingInvitations(db, double, keptId),
      ...removingPersonOfNobody(db, double),
    ],
  };
}

/** Forgets where invitations were sent to a former member; removes what they sign in with, and them, where nobody has them. */
function removingPersonOfNobody(db: Db, { organizationId, userId }: MemberKey): Statement[] {
  const one = { one: sql`1` };
  const gone = and(
    notExists(db.select(one).from(members).where(eq(members.userId, userId))),
    exists(
      db
        .select(one)
        .from(users)
        .where(and(eq(users.id, userId), eq(users.keeper, false))),
    ),
  );
  const address = db.select({ address: users.email }).from(users).where(eq(users.id, userId));
  return [
    db
      .update(invitations)
      .set({ email: null })
      .where(and(inArray(invitations.email, address), or(eq(invitations.organizationId, organizationId), gone))),
    db.delete(verifications).where(and(eq(verifications.value, userId), gone)),
    // Sessions and the password go with the person.
    db.delete(users).where(and(eq(users.id, userId), gone)),
  ];
}

/** Invitations of an organisation that somebody made are somebody else's from now on. */
function handingInvitations(db: Db, from: MemberKey, to: string): Statement {
  return db
    .update(invitations)
    .set({ inviterId: to })
    .where(and(eq(invitations.organizationId, from.organizationId), eq(invitations.inviterId, from.userId)));
}

function movingWork(db: Db, from: MemberKey, to: string): Statement[] {
  const placesOf = db
    .select({ classId: classPlaces.classId, userId: sql<string>`${to}`.as('user_id'), joinedAt: classPlaces.joinedAt })
    .from(classPlaces)
    .innerJoin(classes, eq(classes.id, classPlaces.classId))
    .where(and(eq(classPlaces.userId, from.userId), eq(classes.organizationId, from.organizationId)));
  return [
    db
      .update(attempts)
      // The keys that started them may meet those of the other person.
      .set({ learnerId: to, key: sql`${attempts.key} || ${`:${from.userId}`}` })
      .where(and(eq(attempts.learnerId, from.userId), eq(attempts.organizationId, from.organizationId))),
    db.insert(classPlaces).select(placesOf).onConflictDoNothing(),
    removingPlaces(db, from),
  ];
}

function removingPlaces(db: Db, { organizationId, userId }: MemberKey): Statement {
  const own = db.select({ id: classes.id }).from(classes).where(eq(classes.organizationId, organizationId));
  return db.delete(classPlaces).where(and(eq(classPlaces.userId, userId), inArray(classPlaces.classId, own)));
}

function removingWork(db: Db, { organizationId, userId }: MemberKey): Statement[] {
  const own = and(eq(attempts.learnerId, userId), eq(attempts.organizationId, organizationId));
  const ids = db.select({ id: attempts.id }).from(attempts).where(own);
  return [
    db.delete(acts).where(inArray(acts.attemptId, ids)),
    db.delete(calls).where(inArray(calls.attemptId, ids)),
    db.delete(attempts).where(own),
  ];
}
