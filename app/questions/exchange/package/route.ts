import { exchangedFrom } from '@/app/_server/exchange/asked-for';
import { type ExportedQuestion, exportedFile } from '@/app/_server/exchange/exported';
import { download } from '@/app/_server/guard';
import { readKeptPicture } from '@/app/_server/pictures/picture-files';
import { packagePieces } from '@/lib/interop/qti/write-package';

/** The questions that are asked for as a QTI 3.0 package. */
export const GET = download('/questions/exchange/package', async (permit, request) =>
  exportedFile(
    permit,
    exchangedFrom(new URL(request.url)),
    { format: 'qti', type: 'application/zip', name: 'faultwright-questions.zip' },
    (batches) => packagePieces(one(batches), readKeptPicture),
  ),
);

async function* one(batches: AsyncGenerator<ExportedQuestion[]>): AsyncGenerator<ExportedQuestion> {
  for await (const batch of batches) yield* batch;
}
