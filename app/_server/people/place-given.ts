import type { Role } from '@/lib/accounts/roles';
import type { SignedInPermit } from '../permit';
import type { ProblemCode } from '../problems';
import { classGiven } from './class-given';
import { rolesGiven } from './roles-given';

/** What somebody new is to be, and the class that they get a place in, if any. */
export interface PlaceGiven {
  roles: Role[];
  classId: string | undefined;
}

/** Roles and class out of a form; or what will not do. A class has places for learners only. */
export async function placeGiven(permit: SignedInPermit, form: unknown): Promise<PlaceGiven | { error: ProblemCode }> {
  const roles = rolesGiven(permit, form);
  if (!roles) return { error: 'roles-given' };
  const classId = await classGiven(permit, form);
  if (classId === null) return { error: 'not-there' };
  if (classId && !roles.includes('learner')) return { error: 'class-for-learners' };
  return { roles, classId };
}
