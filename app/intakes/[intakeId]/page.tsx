import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { finishOverdueIntakes } from '@/app/_server/intakes/finish-intake';
import { readSoFar } from '@/app/_server/intakes/so-far';
import { stateOfIntake } from '@/app/_server/intakes/state';
import { settingsFor } from '@/app/_server/organization-settings';
import { deskBeside, organizationOf } from '@/app/_server/permit';
import { ActForm } from '@/app/_ui/act-form';
import lines from '@/app/_ui/lines.module.css';
import { shownTime } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { findIntake } from '@/db/queries/intakes';
import { listNames } from '@/db/queries/names';
import { can } from '@/lib/accounts/can';
import { stopIntake } from '../actions';
import { Choices } from './choices';
import { Report } from './report';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('intakes');
  return { title: t('one') };
}

/** One new-hire check for those who gave it: what it came to, and how each task was chosen. */
export default page('/intakes/[intakeId]', async (permit, { params }: PageProps<'/intakes/[intakeId]'>) => {
  const { intakeId } = await params;
  const [organizationId, now] = [organizationOf(permit), new Date()];
  await finishOverdueIntakes({ organizationId }, now);
  const intake = await findIntake(database(), organizationId, intakeId);
  if (!intake) notFound();
  const [person] = await listNames(database(), organizationId, [intake.learnerId]);
  const { tasks } = await readSoFar(deskBeside(permit, intake.learnerId), intake, now);
  const settings = await settingsFor(permit.session);
  const state = stateOfIntake(intake, now);
  const t = await getTranslations('intakes');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <div className={ui.head}>
          <h1>{t('of', { name: person?.name ?? t('somebody'), role: intake.profile.text.en.name })}</h1>
          {intake.demo && <span className={ui.small}>{t('demo')}</span>}
        </div>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="facts">
          <h2 id="facts">{t(`state.${state}`)}</h2>
          <p className={ui.prose}>
            {t('givenAt', {
              time: shownTime(intake.createdAt, settings),
              until: shownTime(intake.linkEndsAt, settings),
            })}
            {intake.startedAt && ` ${t('begunAt', { time: shownTime(intake.startedAt, settings) })}.`}
            {intake.finishedAt && ` ${t('finishedAt', { time: shownTime(intake.finishedAt, settings) })}.`}
            {intake.end && ` ${t(`ended.${intake.end}`)}`}
          </p>
          <p className={ui.small}>{t('accommodation', { share: Math.round(intake.extraTime * 100) })}</p>
          {state === 'under-way' && can(permit.session.actor, 'intakes.give', permit.resource) && (
            <ActForm action={stopIntake} submit={t('stop')} failed={problems('no-answer')} quiet>
              <input type="hidden" name="intakeId" value={intake.id} />
            </ActForm>
          )}
        </section>
        {intake.outcome && <Report outcome={intake.outcome} profile={intake.profile} personId={intake.learnerId} />}
        {tasks.length > 0 && <Choices intakeId={intake.id} tasks={tasks} settings={settings} />}
        <p>
          <Link className={lines.way} href="/intakes" prefetch={false}>
            {t('back')}
          </Link>
        </p>
      </main>
    </>
  );
});
