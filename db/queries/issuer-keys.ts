import { and, asc, eq, isNull } from 'drizzle-orm';
import type { Db } from '../client';
import { issuerKeys } from '../schema';
import type { Statement } from '../together';

export type IssuerKeyRow = typeof issuerKeys.$inferSelect;
/** Without its private half. */
export type PublicKeyRow = Omit<IssuerKeyRow, 'sealedPrivate'>;

const publicHalf = {
  kid: issuerKeys.kid,
  organizationId: issuerKeys.organizationId,
  publicJwk: issuerKeys.publicJwk,
  createdBy: issuerKeys.createdBy,
  createdAt: issuerKeys.createdAt,
  retiredAt: issuerKeys.retiredAt,
  compromisedAt: issuerKeys.compromisedAt,
};

/** Keys of every organisation, the oldest first. */
export async function listAllIssuerKeys(db: Db): Promise<PublicKeyRow[]> {
  return db.select(publicHalf).from(issuerKeys).orderBy(asc(issuerKeys.createdAt));
}

/** Keys of an organisation, the oldest first. */
export async function listIssuerKeys(db: Db, organizationId: string): Promise<PublicKeyRow[]> {
  return db
    .select(publicHalf)
    .from(issuerKeys)
    .where(eq(issuerKeys.organizationId, organizationId))
    .orderBy(asc(issuerKeys.createdAt));
}

/** The private half of a key, sealed; undefined where there is no such key. */
export async function findSealedPrivate(db: Db, kid: string): Promise<string | undefined> {
  const [row] = await db.select({ sealed: issuerKeys.sealedPrivate }).from(issuerKeys).where(eq(issuerKeys.kid, kid));
  return row?.sealed;
}

export function addingIssuerKey(db: Db, key: typeof issuerKeys.$inferInsert): Statement {
  return db.insert(issuerKeys).values(key);
}

/** Retires what an organisation signs with. */
export function retiringIssuerKeys(db: Db, organizationId: string, at: Date): Statement {
  return db
    .update(issuerKeys)
    .set({ retiredAt: at })
    .where(and(eq(issuerKeys.organizationId, organizationId), isNull(issuerKeys.retiredAt)));
}

/** Marks a key of an organisation as compromised from a moment on; changes nothing where it is already. */
export function compromisingKey(
  db: Db,
  { kid, organizationId, at }: { kid: string; organizationId: string; at: Date },
): Statement {
  return db
    .update(issuerKeys)
    .set({ compromisedAt: at })
    .where(
      and(eq(issuerKeys.kid, kid), eq(issuerKeys.organizationId, organizationId), isNull(issuerKeys.compromisedAt)),
    );
}
