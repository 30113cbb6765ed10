import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { readTurnLines } from '@/app/_server/review/turn-lines';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listOpenAppeals } from '@/db/queries/appeals';
import { listAssignmentsDone, listFinishedAttempts } from '@/db/queries/review-work';
import { listAwaitingSecond } from '@/db/queries/second-marks';
import { isOverdue } from '@/lib/reviewing/appeal';
import { AttemptList } from './attempt-list';
import { parseReviewQuery } from './parse-review-query';
import styles from './review.module.css';
import { ReviewFilter } from './review-filter';
import { TurnList } from './turn-list';

/** As many as one looks through at a time. */
const LISTED = 60;
const COUNTED = 200;
const ASSIGNMENTS = 200;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('review');
  return { title: t('title') };
}

/** Work to look at: appeals that wait, what was handed in, and cases that were practised. */
export default page('/review', async (permit, { searchParams }: PageProps<'/review'>) => {
  const organizationId = organizationOf(permit);
  const { personId } = permit.session.actor;
  const asked = parseReviewQuery(await searchParams);
  const now = new Date();
  const filter = { organizationId, reviewerId: personId, assignmentId: asked.assignment, unseen: asked.unseen };
  const [assignments, turns, attempts, appeals, second, settings, t] = await Promise.all([
    listAssignmentsDone(database(), organizationId, ASSIGNMENTS),
    asked.kind === 'practice' ? [] : readTurnLines(filter, LISTED, now),
    asked.kind === 'turns' || asked.assignment ? [] : listFinishedAttempts(database(), filter, LISTED),
    listOpenAppeals(database(), { organizationId, deciderId: personId }, COUNTED),
    listAwaitingSecond(database(), { organizationId, markerId: personId }, COUNTED),
    settingsFor(permit.session),
    getTranslations('review'),
  ]);
  const overdue = appeals.filter(({ state, dueAt }) => isOverdue(state, dueAt.getTime(), now.getTime())).length;
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('title')}</h1>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="first">
          <h2 id="first">{t('first')}</h2>
          <ul className={styles.ways}>
            <li>
              <Link className={styles.way} href="/review/appeals" prefetch={false}>
                {t('appealsWaiting', { count: appeals.length })}
              </Link>
              {overdue > 0 && <strong className={styles.overdue}>{t('overdueCount', { count: overdue })}</strong>}
            </li>
            <li>
              <Link className={styles.way} href="/review/second-marks" prefetch={false}>
                {t('secondWaiting', { count: second.length })}
              </Link>
            </li>
          </ul>
        </section>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="filter">
          <h2 id="filter">{t('filterTitle')}</h2>
          <ReviewFilter asked={asked} assignments={assignments} />
        </section>
        {asked.kind !== 'practice' && <TurnList turns={turns} settings={settings} limit={LISTED} />}
        {asked.kind !== 'turns' && !asked.assignment && (
          <AttemptList attempts={attempts} settings={settings} limit={LISTED} />
        )}
      </main>
    </>
  );
});
