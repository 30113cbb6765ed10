import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { LONGEST_NAME } from '@/app/_server/entering/newcomer';
import { page } from '@/app/_server/guard';
import { memberNamed } from '@/app/_server/people/change-member';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { countHeld } from '@/db/queries/people';
import styles from '../../people.module.css';
import { erasePerson } from '../actions';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('people');
  return { title: t('erase') };
}

/** Says what would be removed for good, and removes it once the name is typed. */
export default page('/people/[personId]/erase', async (permit) => {
  const person = await memberNamed(permit);
  const held = await countHeld(database(), person);
  const elsewhere = permit.resource.kind === 'member' && permit.resource.ownSignIn;
  const t = await getTranslations('people');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('eraseTitle', { name: person.name })}</h1>
        <section className={`${ui.panel} ${ui.stack}`} aria-label={t('erase')}>
          <p>{t('eraseBody')}</p>
          <ul>
            <li>{t('eraseAttempts', { count: held.attempts })}</li>
            <li>{t('eraseSittings', { count: held.sittings })}</li>
            <li>{t('eraseClasses', { count: held.classes })}</li>
            <li>{elsewhere ? t('eraseElsewhere') : t('eraseSignIn')}</li>
          </ul>
          <p>{t('eraseWritten')}</p>
          <p>{t('eraseLog')}</p>
          <p>{t('eraseNothingKept')}</p>
          <ActForm className={ui.stack} action={erasePerson} submit={t('eraseNow')} failed={problems('no-answer')}>
            <input type="hidden" name="personId" value={person.userId} />
            <Field label={t('eraseName')} name="name" required maxLength={LONGEST_NAME} autoComplete="off" />
          </ActForm>
        </section>
        <p>
          <Link className={styles.way} href={`/people/${person.userId}`} prefetch={false}>
            {person.name}
          </Link>
        </p>
      </main>
    </>
  );
});
