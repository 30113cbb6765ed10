import { createHmac } from 'node:crypto';
import type { StatusPurpose } from '@/lib/certificates/status-list';
import { env } from '../env';
import { secret } from '../secret';

/** Where what belongs to certificates is found. These stand in what is signed, and so are there for good. */

export function issuerAddress(organizationId: string): string {
  return `${env.FAULTWRIGHT_ORIGIN}/issuers/${encodeURIComponent(organizationId)}`;
}

export function keyAddress(organizationId: string, kid: string): string {
  return `${issuerAddress(organizationId)}/keys/${kid}`;
}

export function statusAddress(organizationId: string, purpose: StatusPurpose): string {
  return `${issuerAddress(organizationId)}/status/${purpose}`;
}

export function certificateAddress(id: string): string {
  return `${env.FAULTWRIGHT_ORIGIN}/verify/${encodeURIComponent(id)}`;
}

/** The id in the address of a certificate; undefined for any other address. */
export function idInAddress(address: string): string | undefined {
  const id = address.slice(certificateAddress('').length);
  return address === certificateAddress(id) ? id : undefined;
}

export function schemeAddress(organizationId: string, { id, version }: { id: string; version: number }): string {
  return `${issuerAddress(organizationId)}#${id}-${version}`;
}

/** What stands for a person towards one organisation, and tells neither another nor anybody else who they are. */
export function holderAddress(organizationId: string, learnerId: string): string {
  const hex = createHmac('sha256', secret()).update(`holder\0${organizationId}\0${learnerId}`).digest('hex');
  // As a UUID of version 8, whose bits are up to whoever makes it. RFC 9562, section 5.8.
  const variant = ((Number.parseInt(hex.slice(16, 17), 16) & 3) | 8).toString(16);
  return `urn:uuid:${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
