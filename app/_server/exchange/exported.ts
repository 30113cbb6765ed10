import { countExchanged, type ExchangedFilter, listExchanged } from '@/db/queries/exchanged-questions';
import { addingLogEntry } from '@/db/queries/log-entries';
import { together } from '@/db/together';
import { MOST_EXPORTED } from '@/lib/interop/qti/write-package';
import type { WrittenQuestion } from '@/lib/questions/written/written-question';
import { database } from '../database';
import { entryBy } from '../log-entry';
import { organizationOf, type SignedInPermit } from '../permit';
import { problem } from '../problems';
import { streamed } from '../streamed';

const AT_ONCE = 200;

export interface ExportedQuestion {
  id: string;
  question: WrittenQuestion;
}

/**
 * A file of the questions that are asked for, as it is written; told to the log.
 *
 * @param pieces  Writes them, some at a time, in the order of their ids.
 */
export async function exportedFile(
  permit: SignedInPermit,
  filter: ExchangedFilter,
  { format, ...file }: { format: 'qti' | 'csv'; type: string; name: string },
  pieces: (questions: AsyncGenerator<ExportedQuestion[]>) => AsyncGenerator<string | Uint8Array>,
): Promise<Response> {
  const organizationId = organizationOf(permit);
  const counts = await countExchanged(database(), organizationId, filter);
  const count = counts.reduce((sum, one) => sum + one.count, 0);
  if (count > MOST_EXPORTED) {
    const told = await problem('exchange-too-many', { count, most: MOST_EXPORTED });
    return new Response(told, { status: 400, headers: { 'content-type': 'text/plain; charset=utf-8' } });
  }
  const entry = entryBy(permit, 'questions-exported', { details: { count, format } });
  await together(database(), [addingLogEntry(database(), entry)]);
  return streamed(pieces(batches(organizationId, filter)), file);
}

async function* batches(organizationId: string, filter: ExchangedFilter): AsyncGenerator<ExportedQuestion[]> {
  for (let after: string | undefined; ; ) {
    const questions = await listExchanged(database(), organizationId, { ...filter, after }, AT_ONCE);
    if (questions.length > 0) yield questions;
    after = questions.at(-1)?.id;
    if (after === undefined || questions.length < AT_ONCE) return;
  }
}
