import { and, asc, count, eq, gt, like, ne, notExists, type SQL, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import type { WrittenForm } from '../../lib/questions/written/written-forms';
import type { WrittenQuestion } from '../../lib/questions/written/written-question';
import type { Db } from '../client';
import { writtenQuestions, writtenVersions } from '../schema';

/** What goes out: what learners are asked, or what every question says now that is in use or being written. */
export const exchangedChoices = ['live', 'newest'] as const;

export interface ExchangedFilter {
  which: (typeof exchangedChoices)[number];
  /** Any, where none is named. */
  topic?: string | undefined;
}

/** Questions to hand out, by their ids, from behind the one that was read last. */
export async function listExchanged(
  db: Db,
  organizationId: string,
  { after = '', ...filter }: ExchangedFilter & { after?: string | undefined },
  limit: number,
): Promise<{ id: string; question: WrittenQuestion }[]> {
  return db
    .select({ id: writtenQuestions.id, question: writtenVersions.body })
    .from(writtenVersions)
    .innerJoin(writtenQuestions, eq(writtenQuestions.id, writtenVersions.questionId))
    .where(and(isMeant(db, organizationId, filter), gt(writtenQuestions.id, after)))
    .orderBy(asc(writtenQuestions.id))
    .limit(limit);
}

/** How many of them there are of each form. */
export async function countExchanged(
  db: Db,
  organizationId: string,
  filter: ExchangedFilter,
): Promise<{ form: WrittenForm; count: number }[]> {
  return db
    .select({ form: writtenVersions.form, count: count() })
    .from(writtenVersions)
    .innerJoin(writtenQuestions, eq(writtenQuestions.id, writtenVersions.questionId))
    .where(isMeant(db, organizationId, filter))
    .groupBy(writtenVersions.form);
}

function isMeant(db: Db, organizationId: string, { which, topic }: ExchangedFilter): SQL | undefined {
  return and(
    eq(writtenQuestions.organizationId, organizationId),
    which === 'live' ? eq(writtenVersions.state, 'live') : and(ne(writtenVersions.state, 'retired'), isNewest(db)),
    topic === undefined ? undefined : like(writtenVersions.topics, `%,${topic},%`),
  );
}

function isNewest(db: Db): SQL {
  const others = alias(writtenVersions, 'others');
  const newer = db
    .select({ one: sql`1` })
    .from(others)
    .where(and(eq(others.questionId, writtenVersions.questionId), gt(others.number, writtenVersions.number)));
  return notExists(newer);
}
