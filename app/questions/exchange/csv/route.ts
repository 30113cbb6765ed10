import { exchangedFrom } from '@/app/_server/exchange/asked-for';
import { type ExportedQuestion, exportedFile } from '@/app/_server/exchange/exported';
import { download } from '@/app/_server/guard';
import { questionsCsvHead, questionsCsvLines } from '@/lib/interop/questions-csv/write-questions-csv';

/** The questions that are asked for as CSV, but for those that a row cannot hold. */
export const GET = download('/questions/exchange/csv', async (permit, request) =>
  exportedFile(
    permit,
    exchangedFrom(new URL(request.url)),
    { format: 'csv', type: 'text/csv; charset=utf-8', name: 'faultwright-questions.csv' },
    csvOf,
  ),
);

async function* csvOf(batches: AsyncGenerator<ExportedQuestion[]>): AsyncGenerator<string> {
  yield questionsCsvHead();
  for await (const batch of batches) yield questionsCsvLines(batch.map(({ question }) => question));
}
