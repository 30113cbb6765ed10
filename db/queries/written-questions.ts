import { and, asc, count, desc, eq, gt, like, ne, notExists, or, type SQL, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import type { WrittenForm } from '../../lib/questions/written/written-forms';
import type { WrittenQuestion } from '../../lib/questions/written/written-question';
import type { Db } from '../client';
import { sittingQuestions, users, writtenQuestions, writtenVersions } from '../schema';
import type { VersionState } from '../schema/written-questions';
import type { Statement } from '../together';

export type WrittenVersion = typeof writtenVersions.$inferSelect;

/** A question as an organisation's list shows it: its newest version, and beside that the one that is live. */
export interface VersionLine {
  id: string;
  questionId: string;
  number: number;
  state: VersionState;
  title: string;
  form: WrittenForm;
  /** As stored. */
  topics: string;
  changedAt: Date;
  /** Null once they are erased. */
  writer: string | null;
}

/** What is left out does not matter. */
export interface VersionFilter {
  state?: VersionState | undefined;
  topic?: string | undefined;
  form?: WrittenForm | undefined;
  /** Part of the title. */
  search?: string | undefined;
}

/** The organisation that a question belongs to: the door compares it. Undefined when there is no such question. */
export async function findQuestionsOrganization(db: Db, questionId: string): Promise<string | undefined> {
  const [row] = await db
    .select({ organizationId: writtenQuestions.organizationId })
    .from(writtenQuestions)
    .where(eq(writtenQuestions.id, questionId));
  return row?.organizationId;
}

/** Every version of a question, newest first. */
export async function listVersions(db: Db, questionId: string): Promise<WrittenVersion[]> {
  return db
    .select()
    .from(writtenVersions)
    .where(eq(writtenVersions.questionId, questionId))
    .orderBy(desc(writtenVersions.number));
}

/** One version, as a sitting keeps it, with the organisation of its question; undefined when there is none. */
export async function findVersion(
  db: Db,
  versionId: string,
): Promise<(WrittenVersion & { organizationId: string }) | undefined> {
  const [row] = await db
    .select({ version: writtenVersions, organizationId: writtenQuestions.organizationId })
    .from(writtenVersions)
    .innerJoin(writtenQuestions, eq(writtenQuestions.id, writtenVersions.questionId))
    .where(eq(writtenVersions.id, versionId));
  return row && { ...row.version, organizationId: row.organizationId };
}

/** The live versions of an organisation, on a topic where one is named, in the order in which their questions were made. */
export async function listLiveVersions(db: Db, organizationId: string, topic?: string): Promise<WrittenVersion[]> {
  const rows = await db
    .select({ version: writtenVersions })
    .from(writtenVersions)
    .innerJoin(writtenQuestions, eq(writtenQuestions.id, writtenVersions.questionId))
    .where(
      and(
        eq(writtenQuestions.organizationId, organizationId),
        eq(writtenVersions.state, 'live'),
        topic === undefined ? undefined : on(topic),
      ),
    )
    .orderBy(asc(writtenQuestions.createdAt), asc(writtenQuestions.id));
  return rows.map(({ version }) => version);
}

/** The questions of an organisation that a filter lets through, those changed last first. */
export async function listWrittenQuestions(
  db: Db,
  organizationId: string,
  filter: VersionFilter,
  limit: number,
): Promise<VersionLine[]> {
  return db
    .select({
      id: writtenVersions.id,
      questionId: writtenVersions.questionId,
      number: writtenVersions.number,
      state: writtenVersions.state,
      title: writtenVersions.title,
      form: writtenVersions.form,
      topics: writtenVersions.topics,
      changedAt: writtenVersions.changedAt,
      writer: users.name,
    })
    .from(writtenVersions)
    .innerJoin(writtenQuestions, eq(writtenQuestions.id, writtenVersions.questionId))
    .leftJoin(users, eq(users.id, writtenVersions.writtenBy))
    .where(and(eq(writtenQuestions.organizationId, organizationId), isShown(db), ...conditionsOf(filter)))
    .orderBy(desc(writtenVersions.changedAt), desc(writtenVersions.id))
    .limit(limit);
}

/** How many of those there are of each state, whatever the filter says of states. */
export async function countWrittenQuestions(
  db: Db,
  organizationId: string,
  { state: _, ...filter }: VersionFilter,
): Promise<Partial<Record<VersionState, number>>> {
  const rows = await db
    .select({ state: writtenVersions.state, count: count() })
    .from(writtenVersions)
    .innerJoin(writtenQuestions, eq(writtenQuestions.id, writtenVersions.questionId))
    .where(and(eq(writtenQuestions.organizationId, organizationId), isShown(db), ...conditionsOf(filter)))
    .groupBy(writtenVersions.state);
  return Object.fromEntries(rows.map((row) => [row.state, row.count]));
}

/** The newest version of its question, or the live one. */
function isShown(db: Db): SQL | undefined {
  const others = alias(writtenVersions, 'others');
  const newer = db
    .select({ one: sql`1` })
    .from(others)
    .where(and(eq(others.questionId, writtenVersions.questionId), gt(others.number, writtenVersions.number)));
  return or(eq(writtenVersions.state, 'live'), notExists(newer));
}

function conditionsOf({ state, topic, form, search }: VersionFilter): (SQL | undefined)[] {
  return [
    state && eq(writtenVersions.state, state),
    topic === undefined ? undefined : on(topic),
    form && eq(writtenVersions.form, form),
    search ? titled(search) : undefined,
  ];
}

function on(topic: string): SQL {
  return like(writtenVersions.topics, `%,${topic},%`);
}

/** Signs that mean something to LIKE are looked for as they are. */
function titled(search: string): SQL {
  const pattern = `%${search.replace(/[\\%_]/g, (sign) => `\\${sign}`)}%`;
  return sql`${writtenVersions.title} like ${pattern} escape '\\'`;
}

/** What is new of a version. */
export interface NewVersion {
  id: string;
  questionId: string;
  /** From 1. */
  number: number;
  body: WrittenQuestion;
  writtenBy: string;
  at: Date;
}

/** Makes a question, whose first version is still to be added; nothing happens when it is there. */
export function addingWrittenQuestion(db: Db, made: typeof writtenQuestions.$inferInsert): Statement {
  return db.insert(writtenQuestions).values(made).onConflictDoNothing({ target: writtenQuestions.id });
}

/** Adds a draft; nothing happens when the question has a version of that number. */
export function addingDraft(db: Db, { body, at, ...version }: NewVersion): Statement {
  return db
    .insert(writtenVersions)
    .values({ ...version, ...columnsOf(body), state: 'draft', changedAt: at })
    .onConflictDoNothing({ target: [writtenVersions.questionId, writtenVersions.number] });
}

/** A version of a question, and who does something to it when. */
export interface VersionAct {
  questionId: string;
  versionId: string;
  personId: string;
  at: Date;
}

/** Changes what a draft says; nobody but who wrote it does, and nothing that somebody was asked ever changes. */
export function changingDraft(db: Db, act: VersionAct, body: WrittenQuestion): Statement {
  const asked = db
    .select({ one: sql`1` })
    .from(sittingQuestions)
    .where(eq(sittingQuestions.writtenVersionId, act.versionId));
  return db
    .update(writtenVersions)
    .set({ ...columnsOf(body), changedAt: act.at })
    .where(and(is(act), eq(writtenVersions.state, 'draft'), wroteIt(act), notExists(asked)));
}

/** Hands a draft to whoever reviews it. */
export function sendingForReview(db: Db, act: VersionAct): Statement {
  return db
    .update(writtenVersions)
    .set({ state: 'in-review', changedAt: act.at })
    .where(and(is(act), eq(writtenVersions.state, 'draft'), wroteIt(act)));
}

/** Makes a version live that somebody else wrote. What was live before is for `retiringOthers`. */
export function approvingVersion(db: Db, act: VersionAct): Statement {
  return db
    .update(writtenVersions)
    .set({ state: 'live', reviewedBy: act.personId, reviewedAt: act.at, reviewNote: null, changedAt: act.at })
    .where(and(is(act), eq(writtenVersions.state, 'in-review'), ne(writtenVersions.writtenBy, act.personId)));
}

/** Retires every live version of a question but one. */
export function retiringOthers(db: Db, { questionId, versionId, at }: VersionAct): Statement {
  return db
    .update(writtenVersions)
    .set({ state: 'retired', changedAt: at })
    .where(
      and(
        eq(writtenVersions.questionId, questionId),
        eq(writtenVersions.state, 'live'),
        ne(writtenVersions.id, versionId),
      ),
    );
}

/** Makes a version a draft again, with what there is to say about it. Who wrote it may take it back so, too. */
export function sendingBack(db: Db, act: VersionAct, note: string | null): Statement {
  return db
    .update(writtenVersions)
    .set({ state: 'draft', reviewedBy: act.personId, reviewedAt: act.at, reviewNote: note, changedAt: act.at })
    .where(and(is(act), eq(writtenVersions.state, 'in-review')));
}

/** Takes a version out of use for good: a live one, or a draft that nobody goes on with. */
export function retiringVersion(db: Db, act: VersionAct): Statement {
  return db
    .update(writtenVersions)
    .set({ state: 'retired', changedAt: act.at })
    .where(and(is(act), or(eq(writtenVersions.state, 'live'), eq(writtenVersions.state, 'draft'))));
}

function is({ questionId, versionId }: VersionAct): SQL | undefined {
  return and(eq(writtenVersions.id, versionId), eq(writtenVersions.questionId, questionId));
}

function wroteIt({ personId }: VersionAct): SQL {
  return eq(writtenVersions.writtenBy, personId);
}

function columnsOf(body: WrittenQuestion) {
  return { body, title: body.title, form: body.body.form, topics: `,${body.topics.join(',')},` };
}

/** Ids of topics out of their stored form. */
export function topicsIn(stored: string): string[] {
  return stored.split(',').filter((id) => id !== '');
}
