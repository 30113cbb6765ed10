import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { SiteHeader } from './_ui/site-header';
import ui from './_ui/ui.module.css';

/** Not there, or not yours: from outside they look the same. */
export default async function NotFound() {
  const t = await getTranslations('notFound');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <section className={`${ui.panel} ${ui.stack}`}>
          <h1>{t('title')}</h1>
          <p>{t('body')}</p>
          <p>
            <Link className={ui.primary} href="/learn" prefetch={false}>
              {t('back')}
            </Link>
          </p>
        </section>
      </main>
    </>
  );
}
