import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { listSchemes } from '@/app/_server/schemes';
import lines from '@/app/_ui/lines.module.css';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { can } from '@/lib/accounts/can';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('schemes');
  return { title: t('title') };
}

/** Every certificate that the organisation gives, with its rules. */
export default page('/schemes', async (permit) => {
  const schemes = await listSchemes(database(), organizationOf(permit));
  const t = await getTranslations('schemes');
  const { actor } = permit.session;
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('body')}</p>
        <section className={ui.panel} aria-label={t('title')}>
          <ul className={lines.lines}>
            {schemes.map(({ id, version, text }) => (
              <li key={id}>
                <Link className={lines.way} href={`/schemes/${id}`} prefetch={false}>
                  {text.en.name}
                </Link>
                <span className={ui.small}>{t('version', { number: version })}</span>
              </li>
            ))}
          </ul>
        </section>
        {can(actor, 'panels.see', permit.resource) && (
          <p>
            <Link className={lines.way} href="/panels" prefetch={false}>
              {t('panels')}
            </Link>
          </p>
        )}
        {can(actor, 'certificates.see', permit.resource) && (
          <p>
            <Link className={lines.way} href="/schemes/applications" prefetch={false}>
              {t('applications')}
            </Link>
          </p>
        )}
      </main>
    </>
  );
});
