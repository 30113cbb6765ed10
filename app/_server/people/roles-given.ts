import { z } from 'zod';
import { can } from '@/lib/accounts/can';
import { type Role, roles } from '@/lib/accounts/roles';
import { organizationOf, type SignedInPermit } from '../permit';

const schema = z.array(z.enum(roles)).min(1);

/** The roles that somebody may give to people who are new here: all of them, or learner alone. */
export function rolesToGive(permit: SignedInPermit): readonly Role[] {
  const nobodyYet = { organizationId: organizationOf(permit), personId: '', roles: [], ownSignIn: false };
  return can(permit.session.actor, 'member.set-roles', { kind: 'member', ...nobodyYet }) ? roles : ['learner'];
}

/** Roles out of a form; undefined where there is none, or one that may not be given. */
export function rolesGiven(permit: SignedInPermit, form: unknown): Role[] | undefined {
  const parsed = schema.safeParse(form instanceof FormData ? form.getAll('roles') : []);
  const allowed = rolesToGive(permit);
  return parsed.success && parsed.data.every((role) => allowed.includes(role)) ? parsed.data : undefined;
}
