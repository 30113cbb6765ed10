import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { deskOf } from '@/app/_server/permit';
import { handInOverdue } from '@/app/_server/sittings/hand-in';
import { reviewCards } from '@/app/_server/sittings/review-cards';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listSittings } from '@/db/queries/sittings';
import { topicsInOrder } from '@/lib/topics/topic';
import learn from '../learn.module.css';
import { CheckForm } from './check-form';
import { DrillForm } from './drill-form';
import { DuePanel } from './due-panel';
import { SittingTable } from './sitting-table';

/** As many as one looks back over. */
const LISTED = 50;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('sittings');
  return { title: t('title') };
}

/** Questions: to drill a topic, to review what is due, to check oneself. */
export default page('/learn/questions', async (permit) => {
  const desk = deskOf(permit);
  const now = new Date();
  await handInOverdue(desk, now);
  const [due, sittings, settings] = await Promise.all([
    reviewCards(desk, now),
    listSittings(database(), desk, LISTED),
    settingsFor(permit.session),
  ]);
  const topics = topicsInOrder(catalogue()).map(({ id, text }) => ({ id, name: text.en.name }));
  const t = await getTranslations('sittings');
  const words = await getTranslations('learn');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('body')}</p>
        <div className={learn.ways}>
          <DrillForm topics={topics} />
          <DuePanel due={due} settings={settings} />
        </div>
        <CheckForm topics={topics} />
        <section className={ui.panel} aria-labelledby="past">
          <div className={ui.head}>
            <h2 id="past">{t('past')}</h2>
            {sittings.length === LISTED && <span className={ui.small}>{t('shownLatest', { count: LISTED })}</span>}
          </div>
          {sittings.length === 0 ? <p>{t('nonePast')}</p> : <SittingTable sittings={sittings} settings={settings} />}
        </section>
        <p>
          <Link className={learn.way} href="/learn" prefetch={false}>
            {words('title')}
          </Link>
        </p>
        <SafetyNote />
      </main>
    </>
  );
});
