import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { LONGEST_NAME } from '@/app/_server/entering/newcomer';
import { page } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { listProfiles } from '@/app/_server/profiles';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import lines from '@/app/_ui/lines.module.css';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listLearners } from '@/db/queries/gradebook';
import { giveIntake } from '../actions';
import { extraTimes, linkDays } from '../choices';

const LISTED = 2000;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('intakes');
  return { title: t('giveTitle') };
}

/** Giving a new-hire check: whom, for which role, with how much time. */
export default page('/intakes/new', async (permit) => {
  const organizationId = organizationOf(permit);
  const profiles = await listProfiles(database(), organizationId);
  const people = await listLearners(database(), organizationId, LISTED);
  const t = await getTranslations('intakes');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('giveTitle')}</h1>
        <section className={`${ui.panel} ${ui.stack}`} aria-label={t('giveTitle')}>
          <p className={ui.prose}>{t('giveBody')}</p>
          <ActForm
            className={ui.stack}
            action={giveIntake}
            submit={t('give')}
            failed={problems('no-answer')}
            done={t('given')}
            clears
          >
            <Field
              label={t('newName')}
              rule={t('newNameRule')}
              name="name"
              maxLength={LONGEST_NAME}
              autoComplete="off"
            />
            <Select name="personId" label={t('orPerson')} options={[['', t('nobody')], ...people.map(byName)]} />
            <Select name="profileId" label={t('role')} options={profiles.map(({ id, text }) => [id, text.en.name])} />
            <Select
              name="extraTime"
              label={t('extraTime')}
              options={extraTimes.map((share) => [String(share), t('extraTimeOf', { share: share * 100 })])}
            />
            <p className={ui.small}>{t('extraTimeRule')}</p>
            <Select
              name="linkDays"
              label={t('linkDays')}
              first="3"
              options={linkDays.map((days) => [String(days), t('days', { days })])}
            />
          </ActForm>
        </section>
        <p>
          <Link className={lines.way} href="/intakes" prefetch={false}>
            {t('back')}
          </Link>
        </p>
      </main>
    </>
  );
});

function byName({ id, name }: { id: string; name: string }): [string, string] {
  return [id, name];
}

function Select({
  name,
  label,
  options,
  first,
}: {
  name: string;
  label: string;
  options: readonly (readonly [value: string, label: string])[];
  first?: string;
}) {
  return (
    <label className={ui.field}>
      <span>{label}</span>
      <select name={name} defaultValue={first}>
        {options.map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}
