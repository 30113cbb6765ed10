import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { setReaderFor } from '@/app/_server/sets/set-reader';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listSets } from '@/db/queries/sets';
import { can } from '@/lib/accounts/can';
import { readySetsInOrder } from '@/lib/sets/ready-set';
import { taskCount } from '@/lib/sets/set-body';
import { SetTable } from './set-table';
import styles from './sets.module.css';

/** As many as a page holds. */
const LISTED = 300;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('sets');
  return { title: t('title') };
}

/** The sets that one made and those that are shared, the archive apart, and ready ones to start from. */
export default page('/sets', async (permit, { searchParams }: PageProps<'/sets'>) => {
  const archived = (await searchParams).archived === 'yes';
  const { actor } = permit.session;
  const sets = await listSets(database(), organizationOf(permit), setReaderFor(actor), { archived, limit: LISTED });
  const t = await getTranslations('sets');
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t(archived ? 'archiveTitle' : 'title')}</h1>
        {!archived && <p className={ui.prose}>{t('intro')}</p>}
        <p className={styles.ways}>
          {!archived && can(actor, 'sets.change', permit.resource) && (
            <Link className={ui.primary} href="/sets/new" prefetch={false}>
              {t('new')}
            </Link>
          )}
          <Link className={styles.way} href={archived ? '/sets' : '/sets?archived=yes'} prefetch={false}>
            {t(archived ? 'back' : 'archiveTitle')}
          </Link>
          {!archived && (
            <Link className={styles.way} href="/paper" prefetch={false}>
              {t('toPaper')}
            </Link>
          )}
        </p>
        <section className={`${ui.panel} ${ui.stack}`} aria-label={t(archived ? 'archiveTitle' : 'title')}>
          {sets.length === 0 ? (
            <p>{t(archived ? 'archiveNone' : 'none')}</p>
          ) : (
            <SetTable sets={sets} ownId={actor.personId} settings={await settingsFor(permit.session)} />
          )}
          {sets.length === LISTED && <p className={ui.small}>{t('limited', { count: LISTED })}</p>}
        </section>
        {!archived && <ReadySets />}
      </main>
    </>
  );
});

async function ReadySets() {
  const t = await getTranslations('sets');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="ready">
      <h2 id="ready">{t('ready')}</h2>
      <p className={`${ui.small} ${ui.prose}`}>{t('readyBody')}</p>
      <ul className={styles.ready}>
        {readySetsInOrder(catalogue().readySets).map(({ id, body, text }) => (
          <li key={id}>
            <Link className={styles.way} href={`/sets/new?from=${id}`} prefetch={false}>
              {body.title}
            </Link>
            <span className={styles.sub}>
              {text.en.about} {t('tasks', { count: taskCount(body) })}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
