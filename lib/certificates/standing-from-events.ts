import type { Standing } from './verify-certificate';

export interface CertificateEvent {
  kind: 'suspended' | 'lifted' | 'revoked' | 'superseded' | 'consent';
  reason: string;
}

/**
 * How a certificate stands after what befell it, the oldest first. What ended it for good stays, whatever was written later.
 */
export function standingFromEvents(events: readonly CertificateEvent[]): Standing {
  const end = events.find(({ kind }) => kind === 'revoked' || kind === 'superseded');
  if (end) return end.kind === 'revoked' ? { code: 'revoked', reason: end.reason } : { code: 'superseded' };
  const last = events.findLast(({ kind }) => kind === 'suspended' || kind === 'lifted');
  return last?.kind === 'suspended' ? { code: 'suspended', reason: last.reason } : { code: 'in-force' };
}
