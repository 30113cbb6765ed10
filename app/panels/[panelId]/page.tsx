import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { judgesIn } from '@/app/_server/panels/judge-of';
import { organizationOf } from '@/app/_server/permit';
import { findScheme } from '@/app/_server/schemes';
import lines from '@/app/_ui/lines.module.css';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { findPanel, listJudges, listRatings } from '@/db/queries/panels';
import { can } from '@/lib/accounts/can';
import { finishedJudges } from '@/lib/readiness/panel-result';
import { Judging } from './judging';
import { PanelOutcome } from './panel-outcome';
import { Running } from './running';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('panels');
  return { title: t('one') };
}

/** A panel: for its judges the tasks to rate, for who runs it how far they are, and at its end the line for everybody on the staff. */
export default page('/panels/[panelId]', async (permit, { params, searchParams }: PageProps<'/panels/[panelId]'>) => {
  const { panelId } = await params;
  const organizationId = organizationOf(permit);
  const panel = await findPanel(database(), organizationId, panelId);
  if (!panel) notFound();
  const ratings = await listRatings(database(), panelId);
  const judges = await listJudges(database(), panelId);
  const scheme = await findScheme(database(), organizationId, panel.schemeId);
  const asked = Number((await searchParams).task ?? 1);
  const place = panel.tasks[asked - 1] ? asked : 1;
  const t = await getTranslations('panels');
  const { actor } = permit.session;
  const round = panel.state === 'second-round' ? 2 : 1;
  const finished = finishedJudges(ratings, round, panel.tasks.length);
  return (
    <>
      <SiteHeader note={t(`state.${panel.state}`)} />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{panel.title}</h1>
        <p className={ui.prose}>
          {t('about', {
            name: scheme?.text.en.name ?? panel.schemeId,
            tasks: panel.tasks.length,
            judges: judges.length,
          })}
          {panel.demo && ` ${t('inventedPanel')}`}
        </p>
        {panel.state !== 'closed' && <p>{t('howFar', { finished: finished.length, judges: judges.length })}</p>}
        {panel.state === 'closed' && <PanelOutcome panel={panel} ratings={ratings} judges={judges} permit={permit} />}
        {can(actor, 'panels.run', permit.resource) && panel.state !== 'closed' && (
          <Running panel={panel} judges={judges} finished={finished} />
        )}
        {panel.state !== 'closed' && (await judgesIn(permit, panel)) && (
          <Judging panel={panel} ratings={ratings} judgeId={actor.personId} place={place} />
        )}
        <SafetyNote />
        <p>
          <Link className={lines.way} href="/panels" prefetch={false}>
            {t('back')}
          </Link>
        </p>
      </main>
    </>
  );
});
