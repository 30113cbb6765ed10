import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { readReviewedSitting } from '@/app/_server/review/reviewed';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listAwaitingSecond, listSecondMarked } from '@/db/queries/second-marks';
import { can } from '@/lib/accounts/can';
import styles from '../review.module.css';
import { MarkedTwiceTable } from './marked-twice-table';
import { SecondMarkPanel } from './second-mark-panel';

const WAITING = 200;
const ASSIGNMENTS = 30;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('review');
  return { title: t('secondTitle') };
}

/** Free text that waits for a second, independent mark, and how far two people agreed where both have marked. */
export default page('/review/second-marks', async (permit, { searchParams }: PageProps<'/review/second-marks'>) => {
  const organizationId = organizationOf(permit);
  const { kept } = await searchParams;
  const now = new Date();
  const writes = can(permit.session.actor, 'review.write', permit.resource);
  const marker = { organizationId, markerId: permit.session.actor.personId };
  const waiting = writes ? await listAwaitingSecond(database(), marker, WAITING) : [];
  const reviewable = await Promise.all(waiting.map(({ sittingId }) => readReviewedSitting(permit, sittingId, now)));
  const open = waiting.filter((_, index) => reviewable[index]);
  const [text] = open;
  const assignments = await listSecondMarked(database(), organizationId, ASSIGNMENTS);
  const t = await getTranslations('review');
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('secondTitle')}</h1>
        <p>
          <Link className={styles.way} href="/review" prefetch={false}>
            {t('back')}
          </Link>
        </p>
        <div role="status">{kept === 'yes' && <p className={ui.notice}>{t('kept')}</p>}</div>
        <p className={ui.prose}>{t('secondRule')}</p>
        {writes && <p>{t('secondWaiting', { count: open.length })}</p>}
        {text && <SecondMarkPanel key={`${text.sittingId} ${text.place}`} text={text} />}
        {assignments.map((assignment) => (
          <MarkedTwiceTable key={assignment.id} assignment={assignment} now={now} readerId={marker.markerId} />
        ))}
      </main>
    </>
  );
});
