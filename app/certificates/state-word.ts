import type { CertificateEventRow, CertificateRow } from '@/db/queries/certificates';
import { standingFromEvents } from '@/lib/certificates/standing-from-events';

/** How a certificate stands, by name: as its records say, or run out. */
export function stateWord(
  { id, expiresAt }: Pick<CertificateRow, 'id' | 'expiresAt'>,
  events: readonly CertificateEventRow[],
  now: Date,
) {
  const { code } = standingFromEvents(events.filter(({ certificateId }) => certificateId === id));
  const ended = code === 'revoked' || code === 'superseded';
  return !ended && now >= expiresAt ? ('expired' as const) : code;
}
