import type { Db } from '@/db/client';
import { listSchemeVersions, listVersionsOfScheme } from '@/db/queries/schemes';
import type { Scheme } from '@/lib/readiness/scheme';
import { catalogue } from './catalogue';

/** Schemes as they stand in an organisation: those of the content, each in the newest version that it made of it. */
export async function listSchemes(db: Db, organizationId: string): Promise<Scheme[]> {
  const own = await listSchemeVersions(db, organizationId);
  return [...catalogue().schemes.values()].map(
    (scheme) => own.find(({ schemeId }) => schemeId === scheme.id)?.body ?? scheme,
  );
}

/** One scheme as it stands in an organisation; undefined where there is none of that id. */
export async function findScheme(db: Db, organizationId: string, schemeId: string): Promise<Scheme | undefined> {
  return (await listSchemes(db, organizationId)).find(({ id }) => id === schemeId);
}

/** A version of a scheme. Who made it, when and why is null for the one that the content came with. */
export interface KeptVersion {
  scheme: Scheme;
  changedAt: Date | null;
  /** Null once they are erased, too. */
  changer: string | null;
  note: string | null;
}

/** Every version of a scheme, newest first; none where there is no such scheme. */
export async function listSchemeHistory(db: Db, organizationId: string, schemeId: string): Promise<KeptVersion[]> {
  const first = catalogue().schemes.get(schemeId);
  if (!first) return [];
  const own = await listVersionsOfScheme(db, organizationId, schemeId);
  const made = own.map(({ body, changedAt, changer, note }) => ({ scheme: body, changedAt, changer, note }));
  return [...made, { scheme: first, changedAt: null, changer: null, note: null }];
}
