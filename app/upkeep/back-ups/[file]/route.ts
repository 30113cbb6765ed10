import { database } from '@/app/_server/database';
import { download } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { openBackUp } from '@/app/_server/upkeep/back-ups';
import { addingLogEntry } from '@/db/queries/log-entries';
import { together } from '@/db/together';

export const GET = download(
  '/upkeep/back-ups/[file]',
  async (permit, _, { file }: { file: string }): Promise<Response> => {
    const found = await openBackUp(file);
    if (!found) return new Response('Not found', { status: 404, headers: { 'content-type': 'text/plain' } });
    const entry = entryBy(permit, 'back-up-downloaded', { details: { file } });
    await together(database(), [addingLogEntry(database(), entry)]);
    return new Response(found.body, {
      headers: {
        'Content-Type': 'application/vnd.sqlite3',
        'Content-Length': String(found.bytes),
        'Content-Disposition': `attachment; filename="${file}"`,
        'Cache-Control': 'no-store',
      },
    });
  },
);
