import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { deskOf } from '@/app/_server/permit';
import styles from '@/app/_ui/lines.module.css';
import { shownDate } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { stateWord } from '@/app/certificates/state-word';
import { listCertificateEvents, listCertificatesOf } from '@/db/queries/certificates';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('ownCertificates');
  return { title: t('title') };
}

/** What somebody holds. */
export default page('/learn/certificates', async (permit) => {
  const held = await listCertificatesOf(database(), deskOf(permit));
  const events = await listCertificateEvents(
    database(),
    held.map(({ id }) => id),
  );
  const settings = await settingsFor(permit.session);
  const t = await getTranslations('ownCertificates');
  const states = await getTranslations('certificates.states');
  const now = new Date();
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <section className={ui.panel} aria-label={t('title')}>
          {held.length === 0 && <p>{t('none')}</p>}
          <ul className={styles.lines}>
            {held.map((row) => (
              <li key={row.id}>
                <Link className={styles.way} href={`/learn/certificates/${row.id}`} prefetch={false}>
                  {row.scheme.text.en.name}
                </Link>
                <span className={ui.small}>
                  {states(stateWord(row, events, now))} · {t('until', { at: shownDate(row.expiresAt, settings) })}
                </span>
              </li>
            ))}
          </ul>
        </section>
        <p>
          <Link className={styles.way} href="/schemes" prefetch={false}>
            {t('schemes')}
          </Link>
        </p>
      </main>
    </>
  );
});
