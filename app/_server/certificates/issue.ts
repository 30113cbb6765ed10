import { createHmac, randomInt } from 'node:crypto';
import {
  addingCertificate,
  addingCertificateEvent,
  type CertificateRow,
  listCertificateEvents,
  listCertificatesOf,
  listTakenPlaces,
} from '@/db/queries/certificates';
import { findOrganization } from '@/db/queries/organizations';
import type { Statement } from '@/db/together';
import { standingFromEvents } from '@/lib/certificates/standing-from-events';
import { freePlace } from '@/lib/certificates/status-list';
import { validity } from '@/lib/certificates/validity';
import { database } from '../database';
import { randomId } from '../random-id';
import { secret } from '../secret';
import { findSigner } from './issuer-keys';
import { signedCertificate } from './signed-certificate';

/** What a certificate is issued on. */
export type Grounds = Pick<
  CertificateRow,
  'organizationId' | 'learnerId' | 'scheme' | 'applicationId' | 'standing' | 'comment' | 'issuedBy' | 'demo'
> & { holderName: string };

/** A certificate that is about to be: a statement that stores it, and what else happens with it. */
export interface Issuing {
  id: string;
  claim: Statement;
  others: Statement[];
}

/**
 * Makes a certificate out. Nothing of its holder but that they have it is in it until they agree to more; what they hold under
 * the same scheme is superseded.
 *
 * @returns what prevents it where it cannot be: nobody has made a key, or every place of the status lists is taken.
 */
export async function issuing(grounds: Grounds, now: Date): Promise<Issuing | 'no-key' | 'no-place'> {
  const { organizationId, scheme, holderName, ...rest } = grounds;
  const [signer, organization, taken] = await Promise.all([
    findSigner(organizationId),
    findOrganization(database(), organizationId),
    listTakenPlaces(database(), organizationId),
  ]);
  const statusIndex = freePlace(new Set(taken), (limit) => randomInt(limit));
  if (!signer) return 'no-key';
  if (statusIndex === undefined) return 'no-place';
  const { validFrom, validUntil } = validity(now.getTime(), scheme.validMonths);
  const facts = {
    ...rest,
    id: idFor(grounds.applicationId),
    organizationId,
    scheme,
    schemeId: scheme.id,
    statusIndex,
    consent: { name: false, results: false },
    issuedAt: new Date(validFrom),
    expiresAt: new Date(validUntil),
  };
  const named = { ...facts, holderName, organizationName: organization?.name ?? '' };
  const row = { ...facts, jwt: await signedCertificate(named, signer, now), kid: signer.kid };
  return { id: row.id, claim: addingCertificate(database(), row), others: await superseding(grounds, row.id, now) };
}

/** As hard to guess as a random one, and the same for the same application, so that it leads to one certificate alone. */
function idFor(applicationId: string | null): string {
  if (applicationId === null) return randomId();
  return createHmac('sha256', secret()).update(`certificate of\0${applicationId}`).digest('hex').slice(0, 20);
}

async function superseding(
  { organizationId, learnerId, scheme, issuedBy }: Grounds,
  by: string,
  at: Date,
): Promise<Statement[]> {
  const held = await listCertificatesOf(database(), { organizationId, learnerId });
  const same = held.filter(({ schemeId }) => schemeId === scheme.id);
  const events = await listCertificateEvents(
    database(),
    same.map(({ id }) => id),
  );
  return same.flatMap(({ id: certificateId }) => {
    const befell = events.filter((event) => event.certificateId === certificateId);
    const { code } = standingFromEvents(befell);
    if (code === 'revoked' || code === 'superseded') return [];
    const event = { id: randomId(), certificateId, kind: 'superseded', reason: by, by: issuedBy, at } as const;
    return [addingCertificateEvent(database(), event, { after: befell.length })];
  });
}
