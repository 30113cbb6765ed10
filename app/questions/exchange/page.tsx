import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { MOST_PACKAGE_BYTES } from '@/app/_server/http/body';
import { organizationOf } from '@/app/_server/permit';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { countExchanged } from '@/db/queries/exchanged-questions';
import { MOST_ITEMS } from '@/lib/interop/qti/read-package';
import { topicsInOrder } from '@/lib/topics/topic';
import styles from '../questions.module.css';
import { ExportForm } from './export-form';
import { FormTable } from './form-table';
import { ImportForm, type ImportWords } from './import-form';

const MEGABYTE = 1024 * 1024;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('exchange');
  return { title: t('title') };
}

/** Questions go out as files that others can read, and come in from such files. */
export default page('/questions/exchange', async (permit) => {
  const t = await getTranslations('exchange');
  const topics = topicsInOrder(catalogue()).map(({ id, text }) => ({ id, name: text.en.name }));
  const counts = await countExchanged(database(), organizationOf(permit), { which: 'newest' });
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('intro')}</p>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="export">
          <h2 id="export">{t('exportTitle')}</h2>
          <p className={ui.prose}>{t('exportBody')}</p>
          <ExportForm topics={topics} />
          <FormTable counts={new Map(counts.map(({ form, count }) => [form, count]))} />
        </section>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="import">
          <h2 id="import">{t('importTitle')}</h2>
          <p className={ui.prose}>{t('importBody', { most: MOST_ITEMS })}</p>
          <ImportForm words={await importWords()} topics={topics} mostBytes={MOST_PACKAGE_BYTES} />
        </section>
        <p>
          <Link className={styles.way} href="/questions" prefetch={false}>
            {t('back')}
          </Link>
        </p>
      </main>
    </>
  );
});

async function importWords(): Promise<ImportWords> {
  const t = await getTranslations('exchange');
  const problems = await getTranslations('problems');
  const megabytes = MOST_PACKAGE_BYTES / MEGABYTE;
  return {
    file: t('file'),
    fileRule: t('fileRule', { megabytes }),
    topic: t('topicGiven'),
    topicRule: t('topicRule'),
    preview: t('preview'),
    failed: problems('no-answer'),
    tooBig: t('tooBig', { megabytes }),
    wait: t('wait'),
    toList: t('toDrafts'),
    colPlace: t('colPlace'),
    colTitle: t('colTitle'),
    colTaken: t('colTaken'),
    colSays: t('colSays'),
    notTaken: t('notTaken'),
  };
}
