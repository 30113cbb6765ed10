import type { Metadata } from 'next';
import Link from 'next/link';
import { getFormatter, getTranslations } from 'next-intl/server';
import { readBook } from '@/app/_server/gradebook/read-book';
import { page } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { meanOf, viewed } from '@/lib/gradebook/book';
import { BookCell } from '../book-cell';
import { cellWords } from '../cell-words';
import styles from '../gradebook.module.css';
import { parseView } from '../parse-view';
import { viewQuery } from '../view-query';

/** Assignments that stand beside one another on a sheet. */
const BESIDE = 7;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('gradebook');
  return { title: t('printTitle') };
}

/** The book as it is looked at, as tables for paper. */
export default page('/gradebook/print', async (permit, { searchParams }: PageProps<'/gradebook/print'>) => {
  const view = parseView(await searchParams);
  const now = new Date();
  const book = await readBook(organizationOf(permit), now);
  const people = viewed(book, view);
  const t = await getTranslations('gradebook');
  const format = await getFormatter();
  const words = await cellWords();
  const sheets = Array.from({ length: Math.ceil(book.assignments.length / BESIDE) }, (_, sheet) => sheet * BESIDE);
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('printTitle')}</h1>
        <p>
          {t('printedAt', { at: format.dateTime(now, { dateStyle: 'medium', timeStyle: 'short' }) })} {t('printHint')}
        </p>
        <p>
          <Link href={`/gradebook${viewQuery(view)}`} prefetch={false}>
            {t('back')}
          </Link>
        </p>
        {sheets.map((from) => (
          <div key={from} className={styles.scroll}>
            <table className={styles.printed}>
              <thead>
                <tr>
                  <th scope="col">{t('person')}</th>
                  <th scope="col">{t('mean')}</th>
                  {book.assignments.slice(from, from + BESIDE).map(({ id, title }) => (
                    <th key={id} scope="col">
                      {title}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {people.map(({ id, name, cells }) => (
                  <tr key={id}>
                    <th scope="row">{name}</th>
                    <td>{meanOf(cells)?.toFixed(0) ?? '–'}</td>
                    {cells.slice(from, from + BESIDE).map((cell, index) => (
                      <td key={book.assignments[from + index]?.id}>
                        <BookCell cell={cell} words={words} />
                      </td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        ))}
      </main>
    </>
  );
});
