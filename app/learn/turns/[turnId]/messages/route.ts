import { database } from '@/app/_server/database';
import { download } from '@/app/_server/guard';
import { deskOf } from '@/app/_server/permit';
import { listUnreadNudges } from '@/db/queries/nudges';
import { findTurn } from '@/db/queries/turns';

/** Messages to the learner of a turn that they have not read. */
export const GET = download(
  '/learn/turns/[turnId]/messages',
  async (permit, _, { turnId }: { turnId: string }): Promise<Response> => {
    const { learnerId } = deskOf(permit);
    const turn = await findTurn(database(), learnerId, turnId);
    const { assignmentId = '' } = turn ?? {};
    const unread = await listUnreadNudges(database(), { assignmentId, userId: learnerId });
    return Response.json(unread.map(({ id, text }) => ({ id, text })));
  },
);
