import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { readReset } from '@/app/_server/entering/reset-secret';
import { page } from '@/app/_server/guard';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { shownName, takesMail } from '@/lib/accounts/sign-in-name';
import { setNewPassword } from './actions';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('reset');
  return { title: t('title'), referrer: 'no-referrer' };
}

/** A new password or PIN by a link that an administrator made. */
export default page('/reset/[token]', async (_, { params }: PageProps<'/reset/[token]'>) => {
  const { token } = await params;
  const person = await readReset(token);
  const t = await getTranslations('reset');
  const invited = await getTranslations('invited');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <section className={`${ui.panel} ${ui.ticket} ${ui.stack}`}>
          {person ? (
            <>
              <h1>{t('title')}</h1>
              <p>{t('for', { name: shownName(person.email) })}</p>
              <ActForm className={ui.stack} action={setNewPassword} submit={t('submit')} failed={problems('no-answer')}>
                <input type="hidden" name="token" value={token} />
                {/* Lets a password keeper file it under the right name. */}
                <input type="hidden" name="username" value={shownName(person.email)} autoComplete="username" />
                <Field
                  label={t('secret')}
                  rule={takesMail(person.email) ? t('passwordRule') : t('pinRule')}
                  name="secret"
                  type="password"
                  required
                  maxLength={200}
                  autoComplete="new-password"
                />
              </ActForm>
            </>
          ) : (
            <>
              <h1>{invited('dead')}</h1>
              <p>{invited('deadBody')}</p>
            </>
          )}
        </section>
      </main>
    </>
  );
});
