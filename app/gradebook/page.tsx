import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { readBook } from '@/app/_server/gradebook/read-book';
import { page } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { can } from '@/lib/accounts/can';
import { packed } from '@/lib/gradebook/wire';
import { BookView } from './book-view';
import { cellWords } from './cell-words';
import { parseView } from './parse-view';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('gradebook');
  return { title: t('title') };
}

export default page('/gradebook', async (permit, { searchParams }: PageProps<'/gradebook'>) => {
  const book = await readBook(organizationOf(permit), new Date());
  const t = await getTranslations('gradebook');
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('body')}</p>
        {book.assignments.length === 0 ? (
          <p className={ui.notice}>{t('none')}</p>
        ) : (
          <BookView
            book={packed(book)}
            classes={book.classes}
            at={parseView(await searchParams)}
            mayExport={can(permit.session.actor, 'gradebook.export', permit.resource)}
            words={await viewWords()}
          />
        )}
      </main>
    </>
  );
});

async function viewWords() {
  const t = await getTranslations('gradebook');
  return {
    grid: t('grid'),
    person: t('person'),
    mean: t('mean'),
    ...(await cellWords()),
    name: t('filterName'),
    class: t('filterClass'),
    allClasses: t('allClasses'),
    state: t('filterState'),
    anyState: t('anyState'),
    sort: t('sort'),
    byName: t('byName'),
    byMean: t('byMean'),
    down: t('down'),
    shown: t.raw('shown'),
    nobody: t('nobody'),
    exportCsv: t('exportCsv'),
    print: t('print'),
  };
}
