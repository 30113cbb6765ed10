import { getTranslations } from 'next-intl/server';
import { topicFrom } from '@/app/_server/exchange/asked-for';
import { fileRefused, rowTeller } from '@/app/_server/exchange/exchange-words';
import { takenIn } from '@/app/_server/exchange/import-questions';
import { readExchange } from '@/app/_server/exchange/read-exchange';
import { upload } from '@/app/_server/guard';
import { problem } from '@/app/_server/problems';
import { answered } from '../answered';

/** Rows that are shown; those that have something to be said come first. */
const MOST_SHOWN = 300;

/** Shows what would come of a file. Nothing is stored. */
export const POST = upload('/questions/exchange/preview', async (_permit, request): Promise<Response> => {
  const topic = topicFrom(new URL(request.url).searchParams.get('topic'));
  if (topic === undefined) return answered({ error: await problem('exchange-topic') });
  const read = await readExchange(new Uint8Array(await request.arrayBuffer()), topic);
  if (!('rows' in read)) return answered({ error: await fileRefused(read) });
  const t = await getTranslations('exchange');
  const good = takenIn(read).length;
  const shown = read.rows.map(await rowTeller());
  const order = (row: (typeof shown)[number]) => (row.takenAs === undefined ? 0 : row.says.length > 0 ? 1 : 2);
  const rows = [...shown].sort((a, b) => order(a) - order(b)).slice(0, MOST_SHOWN);
  return answered({
    summary: t('summary', { good, bad: shown.length - good, shown: rows.length, all: shown.length }),
    rows,
    good,
    submit: good > 0 ? t('importNow', { count: good }) : null,
  });
});
