import type { SetReader } from '@/db/queries/sets';
import type { Actor } from '@/lib/accounts/actor';
import { can } from '@/lib/accounts/can';

/** Which sets somebody sees of the organisation that they work in. */
export function setReaderFor(actor: Actor): SetReader {
  const { personId, organizationId } = actor;
  const seesAll = can(actor, 'sets.see-unshared', { kind: 'organization', organizationId: organizationId ?? '' });
  return { personId, seesAll };
}
