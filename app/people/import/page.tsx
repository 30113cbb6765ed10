import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { page } from '@/app/_server/guard';
import { MOST_ROWS } from '@/app/_server/people/parse-import';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import styles from '../people.module.css';
import { ImportForm } from './import-form';

/** Columns stand by these names whatever the language of the page; the people are invented. */
const EXAMPLE = `name,email,user name,roles,class
Robin Ames,,robin,learner,Morning class
Sasha Orr,sasha@shop.example,,instructor,`;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('people');
  return { title: t('importTitle') };
}

export default page('/people/import', async () => {
  const t = await getTranslations('people');
  const problems = await getTranslations('problems');
  const words = {
    file: t('file'),
    paste: t('paste'),
    preview: t('preview'),
    failed: problems('no-answer'),
    tooBig: problems('import-big'),
    wait: t('importWait'),
  };
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('importTitle')}</h1>
        <section className={`${ui.panel} ${ui.stack}`} aria-label={t('importTitle')}>
          <div className={`${ui.stack} ${styles.onScreen}`}>
            <p className={ui.prose}>{t('importBody', { most: MOST_ROWS })}</p>
            <p className={ui.small}>{t('importExample')}</p>
            <pre className={styles.example}>{EXAMPLE}</pre>
          </div>
          <ImportForm words={words} />
        </section>
        <p className={styles.onScreen}>
          <Link className={styles.way} href="/people" prefetch={false}>
            {t('back')}
          </Link>
        </p>
      </main>
    </>
  );
});
