import { addingClassPlace } from '@/db/queries/classes';
import { addingMember } from '@/db/queries/members';
import { addingCredential, addingUser } from '@/db/queries/users';
import type { Statement } from '@/db/together';
import { formatRoles, type Role } from '@/lib/accounts/roles';
import { database } from '../database';
import { randomId } from '../random-id';

/** Somebody new to the installation, who joins an organisation with it. */
export interface NewPerson {
  id: string;
  name: string;
  /** What they sign in with, as stored (lib/accounts/sign-in-name.ts). */
  address: string;
  /** Of the password or PIN; without one nobody can sign in until a link sets it. */
  hash?: string | undefined;
  organizationId: string;
  roles: readonly Role[];
  classId?: string | undefined;
  keeper?: boolean;
  at: Date;
}

/** Person, sign-in, membership and place in a class. Throws when run while the address is taken. */
export function addingPerson(person: NewPerson): Statement[] {
  const { id, name, address, hash, organizationId, roles, classId, keeper = false, at } = person;
  const db = database();
  return [
    addingUser(db, { id, name, email: address, keeper, createdAt: at, updatedAt: at }),
    ...(hash === undefined ? [] : [addingCredential(db, { userId: id, hash, at })]),
    addingMember(db, { id: randomId(), organizationId, userId: id, role: formatRoles(roles), createdAt: at }),
    ...(classId === undefined ? [] : [addingClassPlace(db, { classId, userId: id, joinedAt: at })]),
  ];
}
