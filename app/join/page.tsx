import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { tryClass } from '@/app/_server/entering/try-class';
import { page } from '@/app/_server/guard';
import { Field } from '@/app/_ui/field';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { WayIn } from '@/app/_ui/way-in';
import { joinClass } from './actions';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('join');
  return { title: t('title') };
}

/** Into a class by its code: first the code, then who one is. */
export default page('/join', async ({ session }, { searchParams }: PageProps<'/join'>) => {
  const { code } = await searchParams;
  const typed = typeof code === 'string' ? code.slice(0, 40) : '';
  const found = typed ? await tryClass(typed) : undefined;
  const t = await getTranslations('join');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <section className={`${ui.panel} ${ui.ticket} ${ui.stack}`}>
          <h1>
            {typeof found === 'object' && 'id' in found
              ? t('to', { name: found.name, organization: found.organization.name })
              : t('title')}
          </h1>
          {typeof found === 'object' && 'id' in found ? (
            <WayIn
              session={session}
              action={joinClass}
              carried={{ name: 'code', value: typed }}
              back={`/join?code=${encodeURIComponent(typed)}`}
              slug={found.organization.slug}
            />
          ) : (
            <form className={ui.stack} method="get" action="/join">
              <Field
                label={t('code')}
                rule={t('codeRule')}
                code
                name="code"
                required
                maxLength={40}
                defaultValue={typed}
                autoComplete="off"
                autoCapitalize="characters"
                spellCheck={false}
              />
              <div role="alert">
                {found && (
                  <p className={ui.alert}>{found === 'none' ? t('noSuch') : t('wait', { minutes: found.minutes })}</p>
                )}
              </div>
              <button type="submit" className={ui.primary}>
                {t('next')}
              </button>
            </form>
          )}
        </section>
      </main>
    </>
  );
});
