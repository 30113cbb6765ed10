import { listStatusEvents } from '@/db/queries/certificates';
import { type CertificateEvent, standingFromEvents } from '@/lib/certificates/standing-from-events';
import { signStatusList } from '@/lib/certificates/status-credential';
import type { StatusPurpose } from '@/lib/certificates/status-list';
import type { Standing } from '@/lib/certificates/verify-certificate';
import { database } from '../database';
import { issuerAddress, statusAddress } from './addresses';
import { findSigner } from './issuer-keys';

/** How long a copy of a list may be gone by: a day. */
const LASTS = 86_400_000;

/** A list of an organisation's, signed; undefined where it has no key in use. */
export async function signedStatusList(
  organizationId: string,
  purpose: StatusPurpose,
  now: Date,
): Promise<string | undefined> {
  const signer = await findSigner(organizationId);
  if (!signer) return undefined;
  const validFrom = Math.floor(now.getTime() / 1000) * 1000;
  const list = {
    id: statusAddress(organizationId, purpose),
    issuer: issuerAddress(organizationId),
    purpose,
    set: await placesSet(organizationId, purpose),
    validFrom,
    validUntil: validFrom + LASTS,
  };
  return signStatusList(list, signer);
}

/** What is gone for good is set in both lists: whoever looks at one alone is not to accept it either. */
async function placesSet(organizationId: string, purpose: StatusPurpose): Promise<number[]> {
  const befell = new Map<number, CertificateEvent[]>();
  for (const { place, kind, reason } of await listStatusEvents(database(), organizationId)) {
    befell.set(place, [...(befell.get(place) ?? []), { kind, reason }]);
  }
  return [...befell].flatMap(([place, events]) => (isSet(standingFromEvents(events), purpose) ? [place] : []));
}

function isSet({ code }: Standing, purpose: StatusPurpose): boolean {
  return code === 'revoked' || code === 'superseded' || (code === 'suspended' && purpose === 'suspension');
}
