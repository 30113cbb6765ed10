import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { safeNext } from '@/app/_server/entering/safe-next';
import { page } from '@/app/_server/guard';
import { ActForm } from '@/app/_ui/act-form';
import { asItIs, Field } from '@/app/_ui/field';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { signIn } from './actions';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('signIn');
  return { title: t('title') };
}

export default page('/sign-in', async ({ session }, { searchParams }: PageProps<'/sign-in'>) => {
  const { next, done } = await searchParams;
  if (session) redirect(safeNext(next));
  const t = await getTranslations('signIn');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <section className={`${ui.panel} ${ui.ticket} ${ui.stack}`}>
          <h1>{t('title')}</h1>
          {done === 'new-secret' && <p className={ui.notice}>{t('newSecret')}</p>}
          <ActForm className={ui.stack} action={signIn} submit={t('submit')} failed={problems('no-answer')}>
            <input type="hidden" name="next" value={safeNext(next)} />
            <Field
              label={t('name')}
              rule={t('nameExample')}
              name="signInName"
              required
              maxLength={200}
              autoComplete="username"
              {...asItIs}
            />
            <Field
              label={t('secret')}
              name="secret"
              type="password"
              required
              maxLength={200}
              autoComplete="current-password"
            />
          </ActForm>
          <p className={ui.small}>{t('lost')}</p>
          <p>
            <a href="/join">{t('join')}</a>
          </p>
        </section>
      </main>
    </>
  );
});
