import { isOpenClassOf } from '@/db/queries/classes';
import { database } from '../database';
import { organizationOf, type SignedInPermit } from '../permit';

/** The class that a form names; undefined for none, null for one that is not the organisation's or is put away. */
export async function classGiven(permit: SignedInPermit, form: unknown): Promise<string | undefined | null> {
  const classId = form instanceof FormData ? form.get('classId') : undefined;
  if (typeof classId !== 'string' || classId === '') return undefined;
  return (await isOpenClassOf(database(), organizationOf(permit), classId)) ? classId : null;
}
