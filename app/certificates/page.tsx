import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { readSettings } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { shownDate } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { type CertificateEventRow, listCertificateEvents, listCertificates } from '@/db/queries/certificates';
import { can } from '@/lib/accounts/can';
import styles from './certificates.module.css';
import { stateWord } from './state-word';
import { ToIssue } from './to-issue';

/** As many as a page holds. */
const LISTED = 500;

/** What runs out within so long is named first. */
const SOON = 90 * 86_400_000;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('certificates');
  return { title: t('title') };
}

/** What the organisation issued, and what waits to be. */
export default page('/certificates', async (permit) => {
  const organizationId = organizationOf(permit);
  const t = await getTranslations('certificates');
  const may = (action: 'certificates.decide' | 'certificates.keys') =>
    can(permit.session.actor, action, permit.resource);
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('body')}</p>
        <p className={styles.ways}>
          {may('certificates.keys') && (
            <Link href="/certificates/keys" prefetch={false}>
              {t('keys')}
            </Link>
          )}
          <Link href="/schemes" prefetch={false}>
            {t('schemes')}
          </Link>
          <Link href="/panels" prefetch={false}>
            {t('panels')}
          </Link>
          <Link href="/verify" prefetch={false}>
            {t('verify')}
          </Link>
        </p>
        {may('certificates.decide') && <ToIssue permit={permit} />}
        <Issued organizationId={organizationId} />
      </main>
    </>
  );
});

async function Issued({ organizationId }: { organizationId: string }) {
  const rows = await listCertificates(database(), organizationId, LISTED);
  const events = await listCertificateEvents(
    database(),
    rows.map(({ id }) => id),
  );
  const t = await getTranslations('certificates');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="issued">
      <h2 id="issued">{t('issuedTitle')}</h2>
      {rows.length === 0 ? <p>{t('none')}</p> : <IssuedTable rows={rows} events={events} />}
    </section>
  );
}

async function IssuedTable({
  rows,
  events,
}: {
  rows: Awaited<ReturnType<typeof listCertificates>>;
  events: readonly CertificateEventRow[];
}) {
  const settings = await readSettings(rows[0]?.organizationId ?? '');
  const t = await getTranslations('certificates');
  const now = new Date();
  return (
    <div className={styles.scroll}>
      <table className={ui.figures}>
        <caption>{t('listed', { count: rows.length })}</caption>
        <thead>
          <tr>
            <th scope="col">{t('holder')}</th>
            <th scope="col">{t('scheme')}</th>
            <th scope="col">{t('state')}</th>
            <th scope="col">{t('until')}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">
                <Link href={`/certificates/${row.id}`} prefetch={false}>
                  {row.holder ?? t('erased')}
                </Link>
              </th>
              <td>{row.scheme.text.en.name}</td>
              <td>
                {t(`states.${stateWord(row, events, now)}`)}
                {row.demo && ` (${t('invented')})`}
              </td>
              <td>
                {shownDate(row.expiresAt, settings)}
                {runsOutSoon(row.expiresAt, now) && ` · ${t('soon')}`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function runsOutSoon(expiresAt: Date, now: Date): boolean {
  return expiresAt > now && expiresAt.getTime() - now.getTime() < SOON;
}
