import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { finishOverdueIntakes } from '@/app/_server/intakes/finish-intake';
import { stateOfIntake } from '@/app/_server/intakes/state';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { ActForm } from '@/app/_ui/act-form';
import lines from '@/app/_ui/lines.module.css';
import { shownTime } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { type Intake, listIntakes } from '@/db/queries/intakes';
import { listNames } from '@/db/queries/names';
import { can } from '@/lib/accounts/can';
import { takeBackIntake } from './actions';

/** More than a shop hires in a year. */
const LISTED = 200;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('intakes');
  return { title: t('title') };
}

/** Every new-hire check of the organisation, the newest first. */
export default page('/intakes', async (permit) => {
  const [organizationId, now] = [organizationOf(permit), new Date()];
  await finishOverdueIntakes({ organizationId }, now);
  const found = await listIntakes(database(), organizationId, LISTED);
  const people = await listNames(
    database(),
    organizationId,
    found.map(({ learnerId }) => learnerId),
  );
  const names = new Map(people.map(({ id, name }) => [id, name]));
  const mayGive = can(permit.session.actor, 'intakes.give', permit.resource);
  const settings = await settingsFor(permit.session);
  const t = await getTranslations('intakes');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('about')}</p>
        {mayGive && (
          <p>
            <Link className={ui.primary} href="/intakes/new" prefetch={false}>
              {t('giveOne')}
            </Link>
          </p>
        )}
        {found.length === 0 ? (
          <p className={ui.prose}>{t('none')}</p>
        ) : (
          <section className={ui.panel} aria-label={t('title')}>
            <ul className={lines.lines}>
              {found.map((intake) => (
                <li key={intake.id}>
                  <Link className={lines.way} href={`/intakes/${intake.id}`} prefetch={false}>
                    {t('of', { name: names.get(intake.learnerId) ?? t('somebody'), role: intake.profile.text.en.name })}
                  </Link>
                  <span className={ui.small}>
                    {t(`state.${stateOfIntake(intake, now)}`)} · {when(intake)}
                    {intake.demo && ` · ${t('demo')}`}
                  </span>
                  {mayGive && stateOfIntake(intake, now) === 'waiting' && (
                    <ActForm action={takeBackIntake} submit={t('takeBack')} failed={problems('no-answer')} quiet>
                      <input type="hidden" name="intakeId" value={intake.id} />
                    </ActForm>
                  )}
                </li>
              ))}
            </ul>
          </section>
        )}
      </main>
    </>
  );

  function when({ createdAt, startedAt, finishedAt, linkEndsAt }: Intake): string {
    if (finishedAt) return t('finishedAt', { time: shownTime(finishedAt, settings) });
    if (startedAt) return t('begunAt', { time: shownTime(startedAt, settings) });
    return t('givenAt', { time: shownTime(createdAt, settings), until: shownTime(linkEndsAt, settings) });
  }
});
