import { type AnyColumn, and, asc, eq, isNull, type SQL } from 'drizzle-orm';
import type { Db } from '../client';
import { comments, users } from '../schema';
import type { Statement } from '../together';

export type NewComment = typeof comments.$inferInsert;

/** A piece of work that a comment, points or an appeal are about: an attempt, or a sitting with or without one of its places. */
export type WorkKey = { attemptId: string } | { sittingId: string; place?: number };

export interface CommentLine {
  id: string;
  /** The act that it is about; null for the whole. */
  seq: number | null;
  /** The place of the sitting that it is about; null for the whole, and for an attempt. */
  place: number | null;
  text: string;
  /** Null once they are erased. */
  writer: string | null;
  writtenAt: Date;
}

/** Everything written to a piece of work, oldest first. */
export async function listComments(db: Db, work: WorkKey): Promise<CommentLine[]> {
  return db
    .select({
      id: comments.id,
      seq: comments.seq,
      place: comments.place,
      text: comments.text,
      writer: users.name,
      writtenAt: comments.writtenAt,
    })
    .from(comments)
    .leftJoin(users, eq(users.id, comments.writtenBy))
    .where(about(comments, work))
    .orderBy(asc(comments.writtenAt), asc(comments.id));
}

export function addingComment(db: Db, comment: NewComment): Statement {
  return db.insert(comments).values(comment);
}

/** Rows about a piece of work; of a sitting without a place all of its places. */
export function about(table: Record<'attemptId' | 'sittingId' | 'place', AnyColumn>, work: WorkKey): SQL | undefined {
  if ('attemptId' in work) return and(eq(table.attemptId, work.attemptId), isNull(table.sittingId));
  return and(eq(table.sittingId, work.sittingId), work.place === undefined ? undefined : eq(table.place, work.place));
}
