import { eq, sql } from 'drizzle-orm';
import type { Db } from '@/db/client';
import { recordAct } from '@/db/queries/acts';
import { recordAttempt } from '@/db/queries/attempts';
import { recordCall } from '@/db/queries/calls';
import { addingClass, addingClassPlace } from '@/db/queries/classes';
import { addingInvitation, type Invitation } from '@/db/queries/invitations';
import { addingManualMark } from '@/db/queries/manual-marks';
import { addingMember } from '@/db/queries/members';
import { addingOrganization } from '@/db/queries/organizations';
import { addingPicture } from '@/db/queries/pictures';
import { marking } from '@/db/queries/question-marks';
import { answering } from '@/db/queries/sitting-answers';
import { addingCredential, addingUser } from '@/db/queries/users';
import { addingDraft, addingWrittenQuestion } from '@/db/queries/written-questions';
import { certificates, sessions, sittingQuestions, verifications } from '@/db/schema';
import { together } from '@/db/together';
import { aFinding, aNewCall, anAct, anAttempt } from './attempt-rows';
import { addHeldCompetency } from './competency-rows';
import { aMember, anOrganization, aUser } from './people-rows';
import { aMark, anAnswer, begin } from './sitting-rows';
import { addHeldTeaching } from './teaching-rows';
import { aWrittenQuestion } from './written-questions';

export const noon = new Date(Date.UTC(2026, 0, 1, 12));
export const dayAfter = new Date(Date.UTC(2026, 0, 2, 12));

/** Puts a shop and a college into an empty database, each with a class. */
export async function makeShopAndCollege(db: Db): Promise<void> {
  await together(db, [
    addingOrganization(db, anOrganization()),
    addingOrganization(db, anOrganization({ id: 'college', name: 'Hill College', slug: 'hill-college' })),
    addingClass(db, { id: 'harbour-class', organizationId: 'harbour', name: 'Mornings', createdAt: noon }),
    addingClass(db, { id: 'college-class', organizationId: 'college', name: 'Evenings', createdAt: noon }),
  ]);
}

/** Adds somebody who signs in with a password, as what they are in which organisation. */
export async function addPersonOf(
  db: Db,
  id: string,
  roles: Readonly<Record<string, string>>,
  changes: Parameters<typeof aUser>[0] & { deactivatedAt?: Date } = {},
): Promise<void> {
  const { deactivatedAt, ...user } = changes;
  await together(db, [
    addingUser(db, aUser({ id, name: id, email: `${id}@harbour.invalid`, ...user })),
    addingCredential(db, { userId: id, hash: `hash of ${id}`, at: noon }),
    ...Object.entries(roles).map(([organizationId, role]) =>
      addingMember(
        db,
        aMember({
          id: `${id}-at-${organizationId}`,
          organizationId,
          userId: id,
          role,
          deactivatedAt: deactivatedAt ?? null,
        }),
      ),
    ),
  ]);
}

export function anInvitation(changes: Partial<Invitation> = {}): Invitation {
  return {
    id: 'invitation-a',
    organizationId: 'harbour',
    inviterId: 'ada',
    email: null,
    role: 'learner',
    status: 'pending',
    createdAt: noon,
    expiresAt: dayAfter,
    tokenHash: `hash of ${changes.id ?? 'invitation-a'}`,
    classId: null,
    ...changes,
  };
}

/**
 * What an organisation may hold of somebody: a finished case with an act, a sitting with an answer and its mark, a place in
 * its class, an invitation, a question and a picture that they made, a mark that they gave, all of teaching and
 * all that was shown and decided.
 */
export async function addHeld(db: Db, userId: string, organizationId: string, key = 'start'): Promise<void> {
  const attemptId = `${userId}-case-at-${organizationId}`;
  await recordAttempt(db, anAttempt({ id: attemptId, learnerId: userId, organizationId, key }));
  await recordAct(
    db,
    userId,
    anAct({ attemptId, key: `${attemptId}-act`, body: aFinding({ words: `${userId} says` }) }),
  );
  await recordCall(db, userId, aNewCall({ attemptId, seq: 2, key: `${attemptId}-call` }));
  await together(db, [
    addingClassPlace(db, { classId: `${organizationId}-class`, userId, joinedAt: noon }),
    addingInvitation(db, anInvitation({ id: `by-${userId}-at-${organizationId}`, organizationId, inviterId: userId })),
  ]);
  await addHeldQuestions(db, userId, organizationId, key);
  const sittingId = `sitting-of-${userId}-at-${organizationId}`;
  const stays = idOfWhatStays(userId, organizationId);
  const held = { userId, organizationId, stays, attemptId, sittingId };
  await addHeldTeaching(db, held);
  await addHeldCompetency(db, { ...held, statusIndex: await db.$count(certificates) });
}

/** Of what an organisation keeps of somebody's when they leave; it does not say who they were. */
export function idOfWhatStays(userId: string, organizationId: string): string {
  return `${[...userId].reverse().join('')}-${organizationId}`;
}

async function addHeldQuestions(db: Db, userId: string, organizationId: string, key: string): Promise<void> {
  const of = `${userId}-at-${organizationId}`;
  const sittingId = `sitting-of-${of}`;
  await begin(db, { id: sittingId, learnerId: userId, organizationId, key });
  const stays = idOfWhatStays(userId, organizationId);
  const version = { questionId: stays, number: 1, body: aWrittenQuestion(), at: noon };
  const picture = { id: stays, organizationId, uploadedBy: userId, uploadedAt: noon };
  await together(db, [
    answering(
      db,
      userId,
      anAnswer({ sittingId, key: `answer-by-${of}`, body: { form: 'words', text: `${userId} says` } }),
    ),
    marking(db, aMark({ sittingId, answer: { form: 'words', text: `${userId} says` } })),
    addingManualMark(db, { sittingId, place: 1, seq: 1, score: 1, comment: '', markedBy: userId, markedAt: dayAfter }),
    addingWrittenQuestion(db, { id: version.questionId, organizationId, createdBy: userId, createdAt: noon }),
    addingDraft(db, { ...version, id: stays, writtenBy: userId }),
    addingPicture(db, { ...picture, width: 1, height: 1, bytes: 9 }),
  ]);
  await db
    .update(sittingQuestions)
    .set({ seed: `seed of ${userId}` })
    .where(eq(sittingQuestions.sittingId, sittingId));
}

/** Where somebody is signed in, and an open link to a new password of theirs. */
export async function addSignedIn(db: Db, userId: string, activeOrganizationId: string): Promise<void> {
  const times = { createdAt: noon, updatedAt: noon, expiresAt: dayAfter };
  await db
    .insert(sessions)
    .values({ id: `${userId}-session`, token: `token of ${userId}`, userId, activeOrganizationId, ...times });
  await db
    .insert(verifications)
    .values({ id: `${userId}-reset`, identifier: `reset-password:${userId}`, value: userId, ...times });
}

/** Every table that there is. */
export async function listTables(db: Db): Promise<string[]> {
  const rows = db.all<{ name: string }>(sql`select name from sqlite_master where type = 'table' order by name`);
  return rows.map(({ name }) => name);
}

/** The tables that have a word anywhere in them, in capitals or not. */
export async function listTablesSaying(db: Db, word: string): Promise<string[]> {
  const said = (table: string) => JSON.stringify(db.all(sql`select * from ${sql.identifier(table)}`)).toLowerCase();
  return (await listTables(db)).filter((table) => said(table).includes(word.toLowerCase()));
}

/** All rows of all tables. */
export async function everything(db: Db): Promise<Record<string, unknown[]>> {
  const tables = await listTables(db);
  return Object.fromEntries(tables.map((table) => [table, db.all(sql`select * from ${sql.identifier(table)}`)]));
}
