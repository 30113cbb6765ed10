import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf, type SignedInPermit } from '@/app/_server/permit';
import { addressOfAppealed, reviewedOf } from '@/app/_server/review/appealed';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { type Appeal, listDecidedAppeals, listOpenAppeals } from '@/db/queries/appeals';
import { can } from '@/lib/accounts/can';
import { AppealBody } from '../appeals-of';
import styles from '../review.module.css';
import { WhoWords } from '../who-words';

/** More than waits anywhere. */
const OPEN = 200;
const DECIDED = 20;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('review');
  return { title: t('appeals') };
}

/** What learners asked to be looked at again: those that are due first, then those decided last. */
export default page('/review/appeals', async (permit) => {
  const of = { organizationId: organizationOf(permit), deciderId: permit.session.actor.personId };
  const [open, decided, t] = await Promise.all([
    listOpenAppeals(database(), of, OPEN),
    listDecidedAppeals(database(), of, DECIDED),
    getTranslations('review'),
  ]);
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('appeals')}</h1>
        <p>
          <Link className={styles.way} href="/review" prefetch={false}>
            {t('back')}
          </Link>
        </p>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="open">
          <h2 id="open">{t('appealsOpen')}</h2>
          <p className={ui.small}>{t('appealsRule')}</p>
          <List appeals={open} permit={permit} none={t('appealsNone')} />
        </section>
        {decided.length > 0 && (
          <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="decided">
            <h2 id="decided">{t('appealsDecided')}</h2>
            <List appeals={decided} permit={permit} none="" />
          </section>
        )}
      </main>
    </>
  );
});

async function List({ appeals, permit, none }: { appeals: readonly Appeal[]; permit: SignedInPermit; none: string }) {
  const now = new Date();
  const settings = await settingsFor(permit.session);
  const t = await getTranslations('review');
  const writes = can(permit.session.actor, 'review.write', permit.resource);
  const works = await Promise.all(appeals.map((appeal) => reviewedOf(permit, appeal, now)));
  const shown = appeals.flatMap((appeal, index) => {
    const work = works[index];
    return work ? [{ appeal, work }] : [];
  });
  if (shown.length === 0) return <p>{none}</p>;
  return (
    <ul className={styles.parts}>
      {shown.map(({ appeal, work }) => (
        <li key={appeal.id}>
          <h3>
            <WhoWords who={work.who} />
            {` · ${work.assignment?.title ?? t('practice')}`}
          </h3>
          <AppealBody appeal={appeal} settings={settings} now={now} writes={writes} />
          <p>
            <Link className={styles.way} href={addressOfAppealed(appeal)} prefetch={false}>
              {t('toWork')}
            </Link>
          </p>
        </li>
      ))}
    </ul>
  );
}
