import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import lines from '@/app/_ui/lines.module.css';
import { shownDate } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listApplications } from '@/db/queries/applications';
import { applicationStates } from '@/db/schema/schemes';

/** As many as are looked at in one go. */
const LISTED = 100;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('applications');
  return { title: t('title') };
}

/** Who applied for a certificate, the open ones first. */
export default page('/schemes/applications', async (permit) => {
  const organizationId = organizationOf(permit);
  const settings = await settingsFor(permit.session);
  const t = await getTranslations('applications');
  const shelves = await Promise.all(
    applicationStates.map(async (state) => ({
      state,
      found: await listApplications(database(), organizationId, state, LISTED),
    })),
  );
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('body')}</p>
        {shelves.map(({ state, found }) =>
          found.length === 0 && state !== 'open' ? null : (
            <section key={state} className={ui.panel} aria-labelledby={state}>
              <h2 id={state}>{t(`state.${state}`)}</h2>
              {found.length === 0 && <p>{t('none')}</p>}
              <ul className={lines.lines}>
                {found.map(({ id, candidate, scheme, appliedAt, demo }) => (
                  <li key={id}>
                    <Link className={lines.way} href={`/schemes/applications/${id}`} prefetch={false}>
                      {candidate ?? t('gone')}
                    </Link>
                    <span className={ui.small}>
                      {scheme.text.en.name}, {t('version', { number: scheme.version })} ·{' '}
                      {shownDate(appliedAt, settings)}
                      {demo && ` · ${t('invented')}`}
                    </span>
                  </li>
                ))}
              </ul>
            </section>
          ),
        )}
        <p>
          <Link className={lines.way} href="/schemes" prefetch={false}>
            {t('toSchemes')}
          </Link>
        </p>
      </main>
    </>
  );
});
