import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { LONGEST_NAME } from '@/app/_server/entering/newcomer';
import { page } from '@/app/_server/guard';
import { rolesToGive } from '@/app/_server/people/roles-given';
import { organizationOf } from '@/app/_server/permit';
import { ActForm } from '@/app/_ui/act-form';
import { asItIs, Field } from '@/app/_ui/field';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { addPerson } from '../actions';
import { ClassChoice } from '../class-choice';
import styles from '../people.module.css';
import { RoleBoxes } from '../role-boxes';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('people');
  return { title: t('addTitle') };
}

export default page('/people/add', async (permit) => {
  const t = await getTranslations('people');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('addTitle')}</h1>
        <section className={`${ui.panel} ${ui.stack}`} aria-label={t('addTitle')}>
          <p className={ui.prose}>{t('addBody')}</p>
          <ActForm
            className={ui.stack}
            action={addPerson}
            submit={t('add')}
            failed={problems('no-answer')}
            done={t('added')}
            clears
          >
            <Field label={t('name')} name="name" required maxLength={LONGEST_NAME} autoComplete="off" />
            <Field
              label={t('signInName')}
              rule={t('signInNameRule', { slug: permit.session.organization?.slug ?? '' })}
              name="signInName"
              required
              maxLength={200}
              autoComplete="off"
              {...asItIs}
            />
            <Field
              label={t('pin')}
              rule={t('pinRule')}
              name="pin"
              inputMode="numeric"
              maxLength={6}
              autoComplete="off"
            />
            <RoleBoxes choices={rolesToGive(permit)} held={['learner']} />
            <ClassChoice organizationId={organizationOf(permit)} />
          </ActForm>
        </section>
        <p>
          <Link className={styles.way} href="/people" prefetch={false}>
            {t('back')}
          </Link>
        </p>
      </main>
    </>
  );
});
