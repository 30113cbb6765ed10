import { addingLogEntry } from '@/db/queries/log-entries';
import { addingPicture } from '@/db/queries/pictures';
import { addingDraft, addingWrittenQuestion } from '@/db/queries/written-questions';
import { together } from '@/db/together';
import type { WrittenQuestion } from '@/lib/questions/written/written-question';
import { database } from '../database';
import { entryBy } from '../log-entry';
import { organizationOf, type SignedInPermit } from '../permit';
import { keepPicture } from '../pictures/picture-files';
import { randomId } from '../random-id';
import type { ReadExchange } from './read-exchange';

/** Those of a file that are right. */
export function takenIn({ rows }: Pick<ReadExchange, 'rows'>): WrittenQuestion[] {
  return rows.flatMap((row) => ('question' in row ? [row.question] : []));
}

/** Keeps the questions of a file as drafts of whoever imports them, all at once. Their pictures are on the disk before. */
export async function importQuestions(permit: SignedInPermit, read: ReadExchange): Promise<void> {
  const questions = takenIn(read);
  const used = new Set(questions.flatMap(picturesOf));
  const pictures = [...read.pictures].filter(([id]) => used.has(id));
  for (const [id, { webp }] of pictures) await keepPicture(id, webp);
  const [organizationId, personId, at] = [organizationOf(permit), permit.session.actor.personId, new Date()];
  await together(database(), [
    ...pictures.map(([id, { webp, width, height }]) =>
      addingPicture(database(), {
        ...{ id, organizationId, width, height },
        ...{ uploadedBy: personId, bytes: webp.byteLength, uploadedAt: at },
      }),
    ),
    ...questions.flatMap((body) => {
      const questionId = randomId();
      return [
        addingWrittenQuestion(database(), { id: questionId, organizationId, createdBy: personId, createdAt: at }),
        addingDraft(database(), { id: randomId(), questionId, number: 1, body, writtenBy: personId, at }),
      ];
    }),
    addingLogEntry(
      database(),
      entryBy(permit, 'questions-imported', { details: { count: questions.length, format: read.format } }),
    ),
  ]);
}

function picturesOf({ picture, body }: WrittenQuestion): string[] {
  return [picture?.id, body.form === 'spot' ? body.picture.id : undefined].filter((id) => id !== undefined);
}
