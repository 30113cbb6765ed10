import { database } from '@/app/_server/database';
import { download } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { openBackUp } from '@/app/_server/upkeep/back-ups';
import { addingLogEntry } from '@/db/queries/log-entries';
import { together } from '@/db/together';

export const GET = download(
  '/upkeep/back-ups/[file]',
  async (permit, request, { file }: { file: string }): Promise<Response> => {
    const body = await openBackUp(file);
    if (!body) return new Response('Not found', { status: 404, headers: { 'content-type': 'text/plain' } });
    const headers = {
      'Content-Type': 'application/vnd.sqlite3',
      'Content-Disposition': `attachment; filename="${file}"`,
      'Cache-Control': 'no-store',
    };
    if (request.method === 'HEAD') {
      // Nobody would read the file to its end, and it would stay open.
      await body.cancel();
      return new Response(null, { headers });
    }
    const entry = entryBy(permit, 'back-up-downloaded', { details: { file } });
    await together(database(), [addingLogEntry(database(), entry)]);
    return new Response(body, { headers });
  },
);
