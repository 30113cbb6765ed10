import { getTranslations } from 'next-intl/server';
import { topicFrom } from '@/app/_server/exchange/asked-for';
import { fileRefused } from '@/app/_server/exchange/exchange-words';
import { importQuestions, takenIn } from '@/app/_server/exchange/import-questions';
import { readExchange } from '@/app/_server/exchange/read-exchange';
import { upload } from '@/app/_server/guard';
import { problem } from '@/app/_server/problems';
import { answered } from '../answered';

/** Keeps the questions of a file that are right, as long as they are as many as the preview showed. */
export const POST = upload('/questions/exchange/import', async (permit, request): Promise<Response> => {
  const { searchParams } = new URL(request.url);
  const topic = topicFrom(searchParams.get('topic'));
  if (topic === undefined) return answered({ error: await problem('exchange-topic') });
  const read = await readExchange(new Uint8Array(await request.arrayBuffer()), topic);
  if (!('rows' in read)) return answered({ error: await fileRefused(read) });
  const count = takenIn(read).length;
  if (count === 0 || String(count) !== searchParams.get('good'))
    return answered({ error: await problem('import-changed') });
  await importQuestions(permit, read);
  const t = await getTranslations('exchange');
  return answered({ imported: t('imported', { count }) });
});
