import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { readProgress } from '@/app/_server/evidence/read-progress';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { deskOf } from '@/app/_server/permit';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { OwnSignOffs } from '@/app/readiness/own-sign-offs';
import { NextPanel } from '../next-panel';
import { DueSection } from './due-section';
import { ProgressView } from './progress-view';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('progress');
  return { title: t('title') };
}

/** What somebody has shown, how sure that is, and what has not been tested. */
export default page('/learn/progress', async (permit, { searchParams }: PageProps<'/learn/progress'>) => {
  const desk = deskOf(permit);
  const now = new Date();
  const { role } = await searchParams;
  const progress = await readProgress(database(), desk, { now, by: 'learner' });
  const settings = await settingsFor(permit.session);
  const t = await getTranslations('progress');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{progress.size === 0 ? t('empty') : t('body')}</p>
        <NextPanel desk={desk} now={now} />
        <DueSection desk={desk} now={now} />
        <ProgressView
          {...{ progress, settings, role }}
          organizationId={desk.organizationId}
          here="/learn/progress"
          by="learner"
        />
        <OwnSignOffs {...desk} />
        <SafetyNote />
      </main>
    </>
  );
});
