import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound, redirect } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { readDebriefView } from '@/app/_server/debrief-view';
import { readDisplay } from '@/app/_server/display';
import { drawingOf } from '@/app/_server/drawings';
import { requireLearner } from '@/app/_server/session';
import { DrawingPanel } from '@/app/_ui/drawing/drawing-panel';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { StartRandom } from '../../../start-random';
import { AfterRepair } from './after-repair';
import styles from './debrief.module.css';
import { GradedFindings } from './graded-findings';
import { Marks } from './marks';
import { Outcome } from './outcome';
import { Route } from './route-bars';
import { SafetyEvents } from './safety-events';
import { Truth } from './truth';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('debrief');
  return { title: t('marks') };
}

/** The graded case, explained. */
export default async function DebriefPage({ params }: PageProps<'/learn/cases/[attemptId]/debrief'>) {
  const learner = await requireLearner();
  const { attemptId } = await params;
  const view = await readDebriefView(learner.id, attemptId);
  if (!view) notFound();
  if (view === 'open') redirect(`/learn/cases/${attemptId}`);

  const { units } = await readDisplay();
  const t = await getTranslations('debrief');
  const { attempt, truths } = view;
  const { rig, hardest } = attempt.face ?? {};
  const faulty = truths.flatMap(({ element }) => element ?? []);
  return (
    <>
      <SiteHeader
        note={
          <>
            {t('note')} <span className={ui.code}>{attempt.code}</span>
          </>
        }
      />
      <main id="main" className={`${ui.page} ${styles.debrief}`}>
        <div className={styles.column}>
          <Outcome view={view} />
          {!attempt.face && <p className={ui.notice}>{t('superseded')}</p>}
          <SafetyEvents view={view} units={units} />
          <GradedFindings view={view} units={units} />
          <AfterRepair view={view} units={units} />
          {rig && <DrawingPanel rig={rig} drawing={drawingOf(rig.id)} faulty={faulty} />}
        </div>
        <div className={styles.column}>
          <Marks view={view} />
          <Truth view={view} />
          <Route view={view} />
          <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="next">
            <h2 id="next">{t('next')}</h2>
            <p>{t('nextBody')}</p>
            <StartRandom label={t('nextCase')} rig={rig?.id} level={hardest ? 'hardest' : 'usual'} />
            <p>
              <Link href={`/learn/cases/${attempt.id}`} prefetch={false}>
                {t('toWorkOrder')}
              </Link>
            </p>
          </section>
        </div>
        <div className={styles.foot}>
          <SafetyNote />
        </div>
      </main>
    </>
  );
}
