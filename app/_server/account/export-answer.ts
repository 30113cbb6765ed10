import { database } from '@/app/_server/database';
import { entryBy } from '@/app/_server/log-entry';
import type { SignedInPermit } from '@/app/_server/permit';
import { streamed } from '@/app/_server/streamed';
import { addingLogEntry } from '@/db/queries/log-entries';
import { together } from '@/db/together';
import { csvExport } from './csv-export';
import { everythingHeldOn } from './everything-held-on';
import { jsonExport } from './json-export';

const exports = {
  json: { type: 'application/json', write: jsonExport },
  csv: { type: 'text/csv; charset=utf-8', write: csvExport },
} as const;

/**
 * Everything held on a person as a file, in one of the formats; 404 for another format. The log tells that it was taken.
 *
 * @param organizationId  The one that is asked about; all of them when left out.
 */
export async function exportAnswer(
  permit: SignedInPermit,
  format: string,
  { personId, organizationId }: { personId: string; organizationId?: string },
): Promise<Response> {
  const held = Object.hasOwn(exports, format)
    ? await everythingHeldOn(database(), personId, new Date(), organizationId)
    : undefined;
  if (!held) return new Response('Not found', { status: 404, headers: { 'content-type': 'text/plain' } });
  const entry = entryBy(permit, 'data-exported', { personId, details: { format } });
  await together(database(), [addingLogEntry(database(), entry)]);
  const { type, write } = exports[format as keyof typeof exports];
  return streamed(write(held, entry.at), { type, name: `faultwright-data.${format}` });
}
