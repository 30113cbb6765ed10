import { and, asc, count, desc, eq, inArray, ne, type SQL } from 'drizzle-orm';
import type { Evidence } from '../../lib/competency/evidence';
import type { Db } from '../client';
import { evidence } from '../schema';
import type { Statement } from '../together';

export { owingEvidence } from './evidence-due';

interface Whose {
  organizationId: string;
  learnerId: string;
}

/** What a list of somebody's evidence is held to. */
export interface EvidenceFilter {
  topics?: readonly string[] | undefined;
  works?: readonly string[] | undefined;
  /** Cases and hands-on checks alone. */
  notQuestions?: boolean | undefined;
}

/** Every revision of somebody's evidence, the newest response first. */
export async function listEvidence(
  db: Db,
  { organizationId, learnerId }: Whose,
  filter: EvidenceFilter = {},
): Promise<Evidence[]> {
  const { topics, works, notQuestions } = filter;
  const held: (SQL | undefined)[] = [
    eq(evidence.learnerId, learnerId),
    eq(evidence.organizationId, organizationId),
    topics ? inArray(evidence.topic, [...topics]) : undefined,
    works ? inArray(evidence.work, [...works]) : undefined,
    notQuestions ? ne(evidence.source, 'question') : undefined,
  ];
  const rows = await db
    .select()
    .from(evidence)
    .where(and(...held))
    .orderBy(desc(evidence.at), asc(evidence.work), asc(evidence.topic), asc(evidence.revision));
  return rows.map(({ id: _, learnerId: __, organizationId: ___, writtenAt: ____, at, ...row }) => ({
    ...row,
    at: at.getTime(),
  }));
}

/** Rows that somebody has in the log. */
export async function countLogged(db: Db, { organizationId, learnerId }: Whose): Promise<number> {
  const [row] = await db
    .select({ value: count() })
    .from(evidence)
    .where(and(eq(evidence.learnerId, learnerId), eq(evidence.organizationId, organizationId)));
  return row?.value ?? 0;
}

/** Adds revisions to somebody's log. @param id  Makes one for each. */
export function loggingEvidence(
  db: Db,
  { organizationId, learnerId }: Whose,
  revisions: readonly Evidence[],
  { id, writtenAt }: { id: () => string; writtenAt: Date },
): Statement[] {
  return revisions.map(({ at, ...one }) =>
    db.insert(evidence).values({ ...one, id: id(), learnerId, organizationId, at: new Date(at), writtenAt }),
  );
}
