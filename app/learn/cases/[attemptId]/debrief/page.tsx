import type { Metadata } from 'next';
import { notFound, redirect } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { readDebriefView } from '@/app/_server/debrief-view';
import { readDisplay } from '@/app/_server/display';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { deskOf } from '@/app/_server/permit';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { CaseFromPerson } from '@/app/learn/appeals/case-from-person';
import { AfterRepair } from './after-repair';
import { BeliefChart } from './belief-chart';
import styles from './debrief.module.css';
import { GradedFindings } from './graded-findings';
import { Marks } from './marks';
import { NextCases } from './next-cases';
import { Outcome } from './outcome';
import { RepairedDrawing } from './repaired-drawing';
import { SafetyEvents } from './safety-events';
import { Truth } from './truth';
import { TrySkipped } from './try-skipped';
import { TwoRoutes } from './two-routes';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('debrief');
  return { title: t('title') };
}

/** The graded case, explained. */
export default page(
  '/learn/cases/[attemptId]/debrief',
  async (permit, { params, searchParams }: PageProps<'/learn/cases/[attemptId]/debrief'>) => {
    const { attemptId } = await params;
    const view = await readDebriefView(deskOf(permit), attemptId, await searchParams);
    if (!view) notFound();
    if (view === 'open' || view === 'untold') redirect(`/learn/cases/${attemptId}`);

    const { units } = await readDisplay();
    const t = await getTranslations('debrief');
    const { attempt, grade } = view;
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
            <TwoRoutes view={view} />
            {grade.course && <BeliefChart view={view} course={grade.course} />}
            <GradedFindings view={view} units={units} />
            <RepairedDrawing view={view} units={units} />
            <AfterRepair view={view} units={units} />
            <TrySkipped view={view} units={units} />
          </div>
          <div className={styles.column}>
            <Marks view={view} />
            <CaseFromPerson view={view} settings={await settingsFor(permit.session)} />
            <Truth view={view} />
            <NextCases view={view} />
          </div>
          <div className={styles.foot}>
            <SafetyNote />
          </div>
        </main>
      </>
    );
  },
);
