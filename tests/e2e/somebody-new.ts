import { randomBytes } from 'node:crypto';
import type { Page } from '@playwright/test';
import { hashPassword } from 'better-auth/crypto';
import { addingMember } from '@/db/queries/members';
import { addingOrganization } from '@/db/queries/organizations';
import { addingCredential, addingUser } from '@/db/queries/users';
import { together } from '@/db/together';
import { newSession, PASSWORD, SESSION_COOKIE } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';

/** Somebody whom no other test knows, in an organisation that no other test knows. */
export interface Somebody {
  id: string;
  name: string;
  /** What they sign in with. */
  signInName: string;
  organizationId: string;
}

/** Makes somebody new, in a new organisation, with the password of all test people. */
export async function somebodyNew(
  role: string,
  organizationId?: string,
  db = openPlace(placeFor(SHARED_PORT)),
): Promise<Somebody> {
  const id = randomBytes(8).toString('hex');
  const [at, slug] = [new Date(), `quay-${id}`];
  const organization = { id: slug, name: `Quay ${id}`, slug, createdAt: at };
  await together(db, [
    ...(organizationId ? [] : [addingOrganization(db, organization)]),
    addingUser(db, { id, name: `Pat ${id}`, email: `pat@${slug}.invalid`, createdAt: at, updatedAt: at }),
    addingCredential(db, { userId: id, hash: await hashPassword(PASSWORD), at }),
    addingMember(db, { id, organizationId: organizationId ?? slug, userId: id, role, createdAt: at }),
  ]);
  return { id, name: `Pat ${id}`, signInName: `pat@${slug}`, organizationId: organizationId ?? slug };
}

/** Signs a page in as somebody, without the form. */
export async function signInNew(page: Page, { id, organizationId }: Somebody): Promise<void> {
  const value = await newSession(openPlace(placeFor(SHARED_PORT)), id, organizationId);
  await page
    .context()
    .addCookies([{ name: SESSION_COOKIE, value, domain: '127.0.0.1', path: '/', httpOnly: true, sameSite: 'Lax' }]);
}
