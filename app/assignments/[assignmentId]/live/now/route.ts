import { liveView } from '@/app/_server/assignments/live-view';
import { database } from '@/app/_server/database';
import { download } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { findAssignment } from '@/db/queries/assignments';

/** What the live page asks for again and again. */
export const GET = download(
  '/assignments/[assignmentId]/live/now',
  async (permit, _request, { assignmentId }: { assignmentId: string }) => {
    const found = await findAssignment(database(), { assignmentId, organizationId: organizationOf(permit) });
    if (!found) return new Response('Not found', { status: 404 });
    return Response.json(await liveView(found, new Date()), { headers: { 'cache-control': 'no-store' } });
  },
);
