import { createHash } from 'node:crypto';
import { organizationOf, type SignedInPermit } from '../permit';

/** The id of what a form makes, the same each time that the form is sent, and nobody else's whatever key they send. */
export function idFromKey(permit: SignedInPermit, key: string): string {
  const whose = [organizationOf(permit), permit.session.actor.personId, key];
  return createHash('sha256').update(JSON.stringify(whose)).digest('hex').slice(0, 20);
}
