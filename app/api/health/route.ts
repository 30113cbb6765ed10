import { database } from '@/app/_server/database';
import { isMigrated } from '@/db/client';

export const dynamic = 'force-dynamic';

/** For whoever watches over the server. Says nothing else, since anybody may ask. */
export async function GET(): Promise<Response> {
  const well = isWell();
  return Response.json(
    { status: well ? 'ok' : 'unavailable' },
    { status: well ? 200 : 503, headers: { 'Cache-Control': 'no-store' } },
  );
}

function isWell(): boolean {
  try {
    return isMigrated(database());
  } catch {
    return false;
  }
}
