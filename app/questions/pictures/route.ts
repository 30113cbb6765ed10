import { database } from '@/app/_server/database';
import { upload } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { organizationOf } from '@/app/_server/permit';
import { keepPicture } from '@/app/_server/pictures/picture-files';
import { readPicture } from '@/app/_server/pictures/read-picture';
import { problem } from '@/app/_server/problems';
import { randomId } from '@/app/_server/random-id';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingPicture } from '@/db/queries/pictures';
import { together } from '@/db/together';
import type { UploadAnswer } from './upload-answer';

/** Takes a picture as the bytes of its file, and keeps what it was drawn anew as. */
export const POST = upload('/questions/pictures', async (permit, request): Promise<Response> => {
  const bytes = new Uint8Array(await request.arrayBuffer());
  const made = await readPicture(bytes);
  if (typeof made === 'string') return answer({ error: await problem(made) }, 400);
  const { webp, width, height } = made;
  const id = randomId();
  await keepPicture(id, webp);
  await together(database(), [
    addingPicture(database(), {
      id,
      organizationId: organizationOf(permit),
      uploadedBy: permit.session.actor.personId,
      width,
      height,
      bytes: webp.byteLength,
      uploadedAt: new Date(),
    }),
    addingLogEntry(database(), entryBy(permit, 'picture-added', { details: { picture: id } })),
  ]);
  return answer({ picture: { id, width, height } }, 200);
});

function answer(body: UploadAnswer, status: number): Response {
  return Response.json(body, { status, headers: { 'Cache-Control': 'no-store' } });
}
