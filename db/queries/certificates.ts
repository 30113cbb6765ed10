import { and, asc, count, desc, eq, inArray, isNull, type SQL, sql } from 'drizzle-orm';
import type { Consent } from '../../lib/certificates/consent';
import type { Db } from '../client';
import { applications, certificateEvents, certificates, users } from '../schema';
import type { Statement } from '../together';

export type CertificateRow = typeof certificates.$inferSelect;
export type CertificateEventRow = typeof certificateEvents.$inferSelect;
/** With the name of the person; null once they are erased. */
export type NamedCertificate = CertificateRow & { holder: string | null };

/** A certificate; undefined where there is none. */
export async function findCertificate(db: Db, id: string): Promise<NamedCertificate | undefined> {
  const [row] = await named(db).where(eq(certificates.id, id));
  return row && { ...row.certificate, holder: row.holder };
}

/** Whose a certificate is; undefined where there is none. */
export async function findCertificateWork(
  db: Db,
  id: string,
): Promise<{ learnerId: string; organizationId: string } | undefined> {
  const [row] = await db
    .select({ learnerId: certificates.learnerId, organizationId: certificates.organizationId })
    .from(certificates)
    .where(eq(certificates.id, id));
  return row;
}

/** What an organisation issued, the newest first. */
export async function listCertificates(db: Db, organizationId: string, limit: number): Promise<NamedCertificate[]> {
  const rows = await named(db)
    .where(eq(certificates.organizationId, organizationId))
    .orderBy(desc(certificates.issuedAt), asc(certificates.id))
    .limit(limit);
  return rows.map(({ certificate, holder }) => ({ ...certificate, holder }));
}

/** What somebody was issued by an organisation, the newest first. */
export async function listCertificatesOf(
  db: Db,
  { learnerId, organizationId }: { learnerId: string; organizationId: string },
): Promise<CertificateRow[]> {
  return db
    .select()
    .from(certificates)
    .where(and(eq(certificates.learnerId, learnerId), eq(certificates.organizationId, organizationId)))
    .orderBy(desc(certificates.issuedAt), asc(certificates.id));
}

/** Certificates that a key signed. */
export async function listSignedWith(db: Db, kid: string): Promise<CertificateRow[]> {
  return db.select().from(certificates).where(eq(certificates.kid, kid));
}

/** What befell certificates, the oldest first, with who did it; null once they are erased. */
export async function listCertificateEvents(
  db: Db,
  ids: readonly string[],
): Promise<(CertificateEventRow & { doer: string | null })[]> {
  const rows = await db
    .select({ event: certificateEvents, doer: users.name })
    .from(certificateEvents)
    .leftJoin(users, eq(users.id, certificateEvents.by))
    .where(inArray(certificateEvents.certificateId, [...ids]))
    .orderBy(asc(certificateEvents.at), asc(certificateEvents.id));
  return rows.map(({ event, doer }) => ({ ...event, doer }));
}

/** What befell an organisation's certificates, by their places in the status lists, the oldest first. */
export async function listStatusEvents(
  db: Db,
  organizationId: string,
): Promise<{ place: number; kind: CertificateEventRow['kind']; reason: string }[]> {
  return db
    .select({ place: certificates.statusIndex, kind: certificateEvents.kind, reason: certificateEvents.reason })
    .from(certificateEvents)
    .innerJoin(certificates, eq(certificates.id, certificateEvents.certificateId))
    .where(eq(certificates.organizationId, organizationId))
    .orderBy(asc(certificateEvents.at), asc(certificateEvents.id));
}

/** Places of an organisation's status lists that are taken. */
export async function listTakenPlaces(db: Db, organizationId: string): Promise<number[]> {
  const rows = await db
    .select({ place: certificates.statusIndex })
    .from(certificates)
    .where(eq(certificates.organizationId, organizationId));
  return rows.map(({ place }) => place);
}

/** Stores a certificate; changes nothing where there is one of its id, or where its place in the status lists was taken meanwhile. */
export function addingCertificate(db: Db, row: typeof certificates.$inferInsert): Statement {
  return db.insert(certificates).values(row).onConflictDoNothing();
}

/** Adds what befell a certificate; changes nothing where something else befell it since it was looked at. */
export function addingCertificateEvent(
  db: Db,
  { id, certificateId, kind, reason, by, at }: CertificateEventRow,
  { after }: { after: number },
): Statement {
  const column = <T>(name: keyof CertificateEventRow, value: T) =>
    sql<T>`${sql.param(value, certificateEvents[name])}`.as(certificateEvents[name].name);
  const befell = db
    .select({ befell: count() })
    .from(certificateEvents)
    .where(eq(certificateEvents.certificateId, certificateId));
  return db.insert(certificateEvents).select(
    db
      .select({
        id: column('id', id),
        certificateId: column('certificateId', certificateId),
        kind: column('kind', kind),
        reason: column('reason', reason),
        by: column('by', by),
        at: column('at', at),
      })
      .from(sql`(select 1)`)
      .where(eq(sql`(${befell})`, after)),
  );
}

/** Puts a newly signed credential, and what its holder agreed to, in the place of the last. */
export function resigningCertificate(
  db: Db,
  { id, ...signed }: { id: string; jwt: string; kid: string; consent: Consent },
): Statement {
  return db.update(certificates).set(signed).where(eq(certificates.id, id));
}

/** Applications that were granted and have not led to a certificate yet, those decided first first. */
export async function listToIssue(db: Db, organizationId: string, limit: number): Promise<ToIssueRow[]> {
  return toIssue(db, eq(applications.organizationId, organizationId)).orderBy(asc(applications.decidedAt)).limit(limit);
}

/** One of them; undefined where there is none of that id. */
export async function findToIssue(db: Db, organizationId: string, id: string): Promise<ToIssueRow | undefined> {
  const [row] = await toIssue(db, and(eq(applications.organizationId, organizationId), eq(applications.id, id)));
  return row;
}

export type ToIssueRow = Pick<
  typeof applications.$inferSelect,
  'id' | 'learnerId' | 'scheme' | 'decidedAt' | 'demo'
> & {
  holder: string;
};

function toIssue(db: Db, which: SQL | undefined) {
  return db
    .select({
      id: applications.id,
      learnerId: applications.learnerId,
      holder: users.name,
      scheme: applications.scheme,
      decidedAt: applications.decidedAt,
      demo: applications.demo,
    })
    .from(applications)
    .innerJoin(users, eq(users.id, applications.learnerId))
    .leftJoin(certificates, eq(certificates.applicationId, applications.id))
    .where(and(which, eq(applications.state, 'granted'), isNull(certificates.id)))
    .$dynamic();
}

function named(db: Db) {
  return db
    .select({ certificate: certificates, holder: users.name })
    .from(certificates)
    .leftJoin(users, eq(users.id, certificates.learnerId))
    .$dynamic();
}
