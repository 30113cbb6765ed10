import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { page } from '@/app/_server/guard';
import { readOwnIntake } from '@/app/_server/intakes/read-own';
import { settingsFor } from '@/app/_server/organization-settings';
import { deskOf } from '@/app/_server/permit';
import { ActForm } from '@/app/_ui/act-form';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import { TimeLeft } from '@/app/_ui/time-left/time-left';
import ui from '@/app/_ui/ui.module.css';
import learn from '../../learn.module.css';
import { goOnWithIntake } from './actions';
import { Outcome } from './outcome';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('intakes');
  return { title: t('one') };
}

/** One's own new-hire check: the way on while it is open, what came of it afterwards. */
export default page('/learn/intakes/[intakeId]', async (permit, { params }: PageProps<'/learn/intakes/[intakeId]'>) => {
  const { intakeId } = await params;
  const now = new Date();
  const intake = await readOwnIntake(deskOf(permit), intakeId, now);
  if (!intake) notFound();
  const settings = await settingsFor(permit.session);
  const t = await getTranslations('intakes');
  const problems = await getTranslations('problems');
  const { profile, endsAt, finishedAt, startedAt } = intake;
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <div className={ui.head}>
          <h1>{t('forRole', { role: profile.text.en.name })}</h1>
          {intake.demo && <span className={ui.small}>{t('demo')}</span>}
        </div>
        {!startedAt && <p className={ui.notice}>{t('notBegun')}</p>}
        {startedAt && endsAt && !finishedAt && (
          <>
            <TimeLeft closesAt={endsAt} now={now} settings={settings} />
            <section className={`${ui.panel} ${ui.ticket} ${ui.stack}`} aria-labelledby="go-on">
              <h2 id="go-on">{t('goOnTitle')}</h2>
              <p className={ui.prose}>{t('goOnBody')}</p>
              <ActForm action={goOnWithIntake} submit={t('goOn')} failed={problems('no-answer')}>
                <input type="hidden" name="intakeId" value={intake.id} />
              </ActForm>
            </section>
          </>
        )}
        {finishedAt && <Outcome intake={intake} settings={settings} />}
        <p>
          <Link className={learn.way} href="/learn" prefetch={false}>
            {t('toPractice')}
          </Link>
        </p>
        <SafetyNote />
      </main>
    </>
  );
});
