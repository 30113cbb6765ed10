import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { page } from '@/app/_server/guard';
import { secondsOf } from '@/app/_server/intakes/clock';
import { type LinkedIntake, readLink } from '@/app/_server/intakes/read-link';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { startIntake } from './actions';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('intakes');
  return { title: t('one'), referrer: 'no-referrer' };
}

/** Where the link to a new-hire check leads: what comes, and the PIN. */
export default page('/start/[token]', async (_, { params }: PageProps<'/start/[token]'>) => {
  const { token } = await params;
  const linked = await readLink(token, new Date());
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <section className={`${ui.panel} ${ui.ticket} ${ui.stack}`}>
          {typeof linked === 'string' ? <Ended linked={linked} /> : <WhatComes linked={linked} token={token} />}
        </section>
        <SafetyNote />
      </main>
    </>
  );
});

async function Ended({ linked }: { linked: Exclude<LinkedIntake, object> }) {
  const t = await getTranslations('intakes');
  return (
    <>
      <h1>{t(`link.${linked}`)}</h1>
      <p className={ui.prose}>{t(`linkBody.${linked}`)}</p>
    </>
  );
}

/** In plain words; nothing that would tell whose link it is to somebody who found it. */
async function WhatComes({ linked: { intake }, token }: { linked: Extract<LinkedIntake, object>; token: string }) {
  const t = await getTranslations('intakes');
  const problems = await getTranslations('problems');
  const begun = intake.startedAt !== null;
  const told = ['looked', 'notTold', 'tools', 'order', 'break', 'cautions'] as const;
  return (
    <>
      <h1>{t('one')}</h1>
      <p className={ui.lead}>{t('lead', { minutes: Math.round(secondsOf(intake) / 60) })}</p>
      <ul className={ui.prose}>
        {told.map((one) => (
          <li key={one}>{t(`comes.${one}`)}</li>
        ))}
      </ul>
      <ActForm
        className={ui.stack}
        action={startIntake}
        submit={t(begun ? 'goOn' : 'begin')}
        failed={problems('no-answer')}
      >
        <input type="hidden" name="token" value={token} />
        <Field
          label={t('pin')}
          rule={t('pinRule')}
          name="secret"
          type="password"
          required
          maxLength={200}
          autoComplete="current-password"
        />
      </ActForm>
    </>
  );
}
