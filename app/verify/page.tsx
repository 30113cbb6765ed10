import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { page } from '@/app/_server/guard';
import { Field } from '@/app/_ui/field';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { CheckForm } from './check-form';
import { readShownWords } from './read-words';
import styles from './verify.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('verify');
  return { title: t('title') };
}

/** Where anybody finds out whether a certificate is good. */
export default page('/verify', async () => {
  const t = await getTranslations('verify');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('body')}</p>
        <section className={`${ui.panel} ${ui.stack}`} aria-label={t('title')}>
          <CheckForm submit={t('check')} failed={problems('no-answer')} words={await readShownWords()}>
            <label className={ui.field}>
              <span>{t('text')}</span>
              <textarea className={styles.text} name="text" rows={6} spellCheck={false} autoComplete="off" />
            </label>
            <Field label={t('file')} type="file" name="file" accept=".jwt,.txt" />
            <Field label={t('name')} rule={t('nameRule')} name="name" maxLength={120} autoComplete="off" />
            <h2>{t('askedTitle')}</h2>
            <p className={ui.prose}>{t('askedBody')}</p>
            <Field label={t('audience')} rule={t('audienceRule')} name="audience" maxLength={120} autoComplete="off" />
            <Field label={t('nonce')} rule={t('nonceRule')} name="nonce" maxLength={120} autoComplete="off" code />
          </CheckForm>
        </section>
      </main>
    </>
  );
});
