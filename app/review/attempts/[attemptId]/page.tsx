import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { attemptView } from '@/app/_server/attempt-view';
import { database } from '@/app/_server/database';
import { debriefView } from '@/app/_server/debrief-view';
import { readDisplay } from '@/app/_server/display';
import { page } from '@/app/_server/guard';
import { readHistory } from '@/app/_server/history';
import { settingsFor } from '@/app/_server/organization-settings';
import { deskBeside } from '@/app/_server/permit';
import { effectiveAttempt } from '@/app/_server/review/effective-work';
import { replayOf } from '@/app/_server/review/replay';
import { readReviewedAttempt } from '@/app/_server/review/reviewed';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listAppealsOf } from '@/db/queries/appeals';
import { listComments } from '@/db/queries/comments';
import { can } from '@/lib/accounts/can';
import { commentOnAttempt } from '../../actions';
import { AppealsOf } from '../../appeals-of';
import { Comments } from '../../comments';
import styles from '../../review.module.css';
import { WorkHead } from '../../work-head';
import { PartPoints } from './part-points';
import { Replay } from './replay';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('review');
  return { title: t('attemptTitle') };
}

/** An attempt of somebody else's, act by act, with room for what a person says to it and gives for it. */
export default page(
  '/review/attempts/[attemptId]',
  async (permit, { params }: PageProps<'/review/attempts/[attemptId]'>) => {
    const { attemptId } = await params;
    const now = new Date();
    const work = await readReviewedAttempt(permit, attemptId, now);
    const history = work && (await readHistory(deskBeside(permit, work.learnerId), attemptId));
    if (!work || !history) notFound();
    const { call } = history;
    const debrief = call && debriefView(history, call, {});
    const view = debrief?.attempt ?? attemptView(history);
    const [{ units }, settings, comments, appeals, counted, t] = await Promise.all([
      readDisplay(),
      settingsFor(permit.session),
      listComments(database(), { attemptId }),
      listAppealsOf(database(), { attemptId }),
      call && effectiveAttempt(work, attemptId, call.grade),
      getTranslations('review'),
    ]);
    const writes = can(permit.session.actor, 'review.write', permit.resource);
    const shown = { view, debrief, units, settings, comments, writes };
    return (
      <>
        <SiteHeader />
        <main id="main" className={`${ui.page} ${styles.work}`}>
          <div className={styles.column}>
            <WorkHead work={work} title={t('caseNamed', { code: work.caseCode ?? '' })} settings={settings} />
            {call && !view.face && <p className={ui.notice}>{t('superseded')}</p>}
            <Replay {...shown} steps={replayOf(history, view, debrief)} />
          </div>
          <div className={styles.column}>
            <AppealsOf appeals={appeals} settings={settings} now={now} writes={writes} />
            {debrief && counted && <PartPoints view={debrief} {...counted} settings={settings} writes={writes} />}
            <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="whole">
              <h2 id="whole">{t('whole')}</h2>
              <Comments
                comments={comments.filter(({ seq }) => seq === null)}
                settings={settings}
                label={t('onWhole')}
                commenting={writes ? { action: commentOnAttempt, about: { attemptId } } : undefined}
              />
            </section>
          </div>
          <div className={styles.foot}>
            <SafetyNote />
          </div>
        </main>
      </>
    );
  },
);
