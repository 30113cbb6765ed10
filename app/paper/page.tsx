import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { page } from '@/app/_server/guard';
import { problem } from '@/app/_server/problems';
import { Field } from '@/app/_ui/field';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { parseCaseCode } from '@/lib/cases/case-code';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('paper');
  return { title: t('title') };
}

/** Where a case is chosen to be printed. */
export default page('/paper', async (_, { searchParams }: PageProps<'/paper'>) => {
  const { code } = await searchParams;
  const t = await getTranslations('paper');
  const typed = typeof code === 'string' ? code.trim().slice(0, 200) : '';
  const read = typed ? parseCaseCode(typed, catalogue()) : undefined;
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('body')}</p>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="choose">
          <h2 id="choose">{t('chooseTitle')}</h2>
          <form className={ui.stack}>
            <Field
              label={t('code')}
              rule={t('codeExample')}
              code
              name="code"
              required
              maxLength={200}
              defaultValue={typed}
              autoComplete="off"
              autoCapitalize="characters"
              spellCheck={false}
            />
            <button type="submit" className={ui.primary}>
              {t('find')}
            </button>
          </form>
          {read && 'error' in read && (
            <p role="alert" className={ui.alert}>
              {await problem(`code-${read.error}`, { code: typed })}
            </p>
          )}
          {read && !('error' in read) && (
            <ul>
              <li>
                <Link href={`/paper/${encodeURIComponent(typed)}`} prefetch={false}>
                  {t('sheet')}
                </Link>
              </li>
              <li>
                <Link href={`/paper/${encodeURIComponent(typed)}/key`} prefetch={false}>
                  {t('key')}
                </Link>
              </li>
            </ul>
          )}
        </section>
      </main>
    </>
  );
});
