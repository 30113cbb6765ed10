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
import { listPanels } from '@/db/queries/panels';
import { can } from '@/lib/accounts/can';
import { NewPanel } from './new-panel';

/** More than an organisation ever holds. */
const LISTED = 200;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('panels');
  return { title: t('title') };
}

/** The panels of judges of the organisation. */
export default page('/panels', async (permit) => {
  const found = await listPanels(database(), organizationOf(permit), LISTED);
  const settings = await settingsFor(permit.session);
  const t = await getTranslations('panels');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('body')}</p>
        <section className={ui.panel} aria-label={t('title')}>
          {found.length === 0 && <p>{t('none')}</p>}
          <ul className={lines.lines}>
            {found.map(({ id, title, state, createdAt, demo }) => (
              <li key={id}>
                <Link className={lines.way} href={`/panels/${id}`} prefetch={false}>
                  {title}
                </Link>
                <span className={ui.small}>
                  {t(`state.${state}`)} · {shownDate(createdAt, settings)}
                  {demo && ` · ${t('invented')}`}
                </span>
              </li>
            ))}
          </ul>
        </section>
        {can(permit.session.actor, 'panels.run', permit.resource) && (
          <NewPanel organizationId={organizationOf(permit)} />
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
