import type { StatusPlace } from './certificate';
import { statusAt } from './status-list';
import type { Standing } from './verify-certificate';

/**
 * How a certificate stands, by the two published lists alone: what anybody can find out without asking for records. Which
 * reason there was is not in them, nor whether it was revoked or superseded.
 *
 * @returns undefined where the lists have no such place.
 */
export function standingFromLists(
  { index }: StatusPlace,
  lists: { suspensions: Uint8Array; revocations: Uint8Array },
): Standing | undefined {
  const [suspended, revoked] = [statusAt(lists.suspensions, index), statusAt(lists.revocations, index)];
  if (suspended === undefined || revoked === undefined) return undefined;
  if (revoked) return { code: 'revoked', reason: '' };
  return suspended ? { code: 'suspended', reason: '' } : { code: 'in-force' };
}
