import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { ActForm } from '@/app/_ui/act-form';
import { NewcomerFields } from '@/app/_ui/newcomer-fields';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { countUsers } from '@/db/queries/users';
import { setUp } from './actions';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('setUp');
  return { title: t('title') };
}

/** The first page of a new installation; not there any more once it has people. */
export default page('/set-up', async () => {
  if ((await countUsers(database())) > 0) notFound();
  const t = await getTranslations('setUp');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <section className={`${ui.panel} ${ui.ticket} ${ui.stack}`}>
          <h1>{t('title')}</h1>
          <p className={ui.prose}>{t('body')}</p>
          <ActForm className={ui.stack} action={setUp} submit={t('submit')} failed={problems('no-answer')}>
            <label className={ui.field}>
              <span>{t('token')}</span>
              <input
                className={ui.code}
                name="token"
                required
                maxLength={200}
                autoComplete="off"
                spellCheck={false}
                aria-describedby="token-rule"
              />
            </label>
            <p id="token-rule" className={ui.small}>
              {t('tokenRule')}
            </p>
            <label className={ui.field}>
              <span>{t('organization')}</span>
              <input name="organization" required maxLength={80} autoComplete="organization" />
            </label>
            <label className={ui.field}>
              <span>{t('slug')}</span>
              <input
                name="slug"
                required
                maxLength={40}
                autoComplete="off"
                autoCapitalize="none"
                spellCheck={false}
                aria-describedby="slug-rule"
              />
            </label>
            <p id="slug-rule" className={ui.small}>
              {t('slugRule')}
            </p>
            <NewcomerFields slug={t('slugExample')} />
          </ActForm>
        </section>
      </main>
    </>
  );
});
