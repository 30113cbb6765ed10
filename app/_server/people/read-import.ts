import { listClasses } from '@/db/queries/classes';
import { findOrganization } from '@/db/queries/organizations';
import { listTaken } from '@/db/queries/users';
import { database } from '../database';
import { organizationOf, type SignedInPermit } from '../permit';
import { type ImportRow, markTaken, parseImport, type UnreadList } from './parse-import';
import { rolesToGive } from './roles-given';

/** More classes than an organisation has. */
const LISTED = 300;

/** A list of people as it stands against the organisation being worked in, now. */
export async function readImport(permit: SignedInPermit, csv: string): Promise<ImportRow[] | UnreadList> {
  const organizationId = organizationOf(permit);
  const organization = await findOrganization(database(), organizationId);
  const classes = await listClasses(database(), organizationId, LISTED);
  const open = classes.filter(({ archivedAt }) => archivedAt === null);
  const rows = parseImport(csv, {
    slug: organization?.slug ?? '',
    classes: open,
    rolesToGive: rolesToGive(permit),
  });
  if ('error' in rows) return rows;
  const taken = await listTaken(
    database(),
    rows.flatMap(({ address }) => address || []),
  );
  return markTaken(rows, taken);
}
