import type { Actor } from './actor';
import { type Action, type Permission, permissions, type Reach } from './permissions';
import type { Resource } from './resource';
import { type Role, roles } from './roles';

/**
 * Whether somebody may do something to something. The only place that decides it.
 *
 * @param actor  null for somebody who is not signed in.
 */
export function can(actor: Actor | null, action: Action, resource: Resource): boolean {
  const permission: Permission = permissions[action];
  if (permission.anyone) return true;
  if (!actor) return false;
  if (permission.signedIn && isOwn(actor, resource)) return true;
  if (permission.keeper && actor.keeper && resource.kind === 'installation') return true;
  if (permission.sparesOwnSignIn && sparesOwnSignIn(actor, resource)) return false;
  return roles.some((role) => actor.roles.includes(role) && reaches(permission[role], actor, resource));
}

function isOwn({ personId, organizationIds }: Actor, resource: Resource): boolean {
  if (resource.kind === 'account') return resource.personId === personId;
  return resource.kind === 'organization' && organizationIds.includes(resource.organizationId);
}

/** What one does to oneself needs no sparing. */
function sparesOwnSignIn({ personId }: Actor, resource: Resource): boolean {
  return resource.kind === 'member' && resource.ownSignIn && resource.personId !== personId;
}

function reaches(reach: Reach | undefined, { personId, organizationId }: Actor, resource: Resource): boolean {
  if (!reach || !('organizationId' in resource) || resource.organizationId !== organizationId) return false;
  if (reach === 'organization') return true;
  if (reach === 'learners') return resource.kind === 'member' && isLearnerAlone(resource.roles);
  return 'personId' in resource && resource.personId === personId;
}

/** Whoever holds no role that is known is no learner either. */
function isLearnerAlone(held: readonly Role[]): boolean {
  return held.includes('learner') && held.every((role) => role === 'learner');
}
