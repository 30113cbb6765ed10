import { database } from '@/app/_server/database';
import { download } from '@/app/_server/guard';
import { isMigrated } from '@/db/client';

export const dynamic = 'force-dynamic';

/** For whoever watches over the server. Says nothing else, since anybody may ask. */
const ask = download('/api/health', async () => answer(isMigrated(database())));

export const GET: typeof ask = (request, context) => ask(request, context).catch(() => answer(false));

function answer(well: boolean): Response {
  return Response.json(
    { status: well ? 'ok' : 'unavailable' },
    { status: well ? 200 : 503, headers: { 'Cache-Control': 'no-store' } },
  );
}
