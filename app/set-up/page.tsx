import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { ActForm } from '@/app/_ui/act-form';
import { asItIs, Field } from '@/app/_ui/field';
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
            <Field
              label={t('token')}
              rule={t('tokenRule')}
              code
              name="token"
              required
              maxLength={200}
              autoComplete="off"
              spellCheck={false}
            />
            <Field label={t('organization')} name="organization" required maxLength={80} autoComplete="organization" />
            <Field
              label={t('slug')}
              rule={t('slugRule')}
              name="slug"
              required
              maxLength={40}
              autoComplete="off"
              {...asItIs}
            />
            <NewcomerFields slug={t('slugExample')} />
          </ActForm>
        </section>
      </main>
    </>
  );
});
