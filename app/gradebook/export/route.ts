import { getTranslations } from 'next-intl/server';
import { type CsvCell, csvHead, csvLines } from '@/app/_server/csv';
import { database } from '@/app/_server/database';
import { readBook } from '@/app/_server/gradebook/read-book';
import { download } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { organizationOf } from '@/app/_server/permit';
import { streamed } from '@/app/_server/streamed';
import { addingLogEntry } from '@/db/queries/log-entries';
import { together } from '@/db/together';
import { type Cell, meanOf, viewed } from '@/lib/gradebook/book';
import { parseView } from '../parse-view';

/** The book as it is looked at, as a CSV file that a spreadsheet reads. */
export const GET = download('/gradebook/export', async (permit, request) => {
  const view = parseView(Object.fromEntries(new URL(request.url).searchParams));
  const book = await readBook(organizationOf(permit), new Date());
  const people = viewed(book, view);
  const details = { count: people.length };
  await together(database(), [addingLogEntry(database(), entryBy(permit, 'gradebook-exported', { details }))]);
  const t = await getTranslations('gradebook');
  const said = (cell: Cell): CsvCell => {
    if (cell.state === 'done') return cell.total;
    return cell.state === 'not-given' ? null : t(`states.${cell.state}`);
  };
  const classNames = new Map(book.classes.map(({ id, name }) => [id, name]));
  const rows = people.map(({ name, classes, cells }): CsvCell[] => [
    name,
    classes.map((id) => classNames.get(id)).join(', '),
    toTenths(meanOf(cells)),
    ...cells.flatMap((cell) => [said(cell), cell.late ? t('late') : null]),
  ]);
  const head = [
    ...[t('columns.person'), t('columns.classes'), t('columns.mean')],
    ...book.assignments.flatMap(({ title }) => [title, `${title}: ${t('late')}`]),
  ];
  const pieces = async function* () {
    yield csvHead(head);
    yield csvLines(rows);
  };
  return streamed(pieces(), { type: 'text/csv; charset=utf-8', name: 'faultwright-grades.csv' });
});

function toTenths(mean: number | null): number | null {
  return mean === null ? null : Math.round(mean * 10) / 10;
}
