import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { LONGEST_NAME } from '@/app/_server/entering/newcomer';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import type { Session } from '@/app/_server/session';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listSessions } from '@/db/queries/sessions';
import { parseRoles } from '@/lib/accounts/roles';
import { shownName, takesMail } from '@/lib/accounts/sign-in-name';
import { changePassword, renameSelf } from './actions';
import styles from './me.module.css';
import { SessionList } from './session-list';
import { YourData } from './your-data';

/** More devices than anybody has. */
const LISTED = 50;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('account');
  return { title: t('title') };
}

export default page('/me', async ({ session }, { searchParams }: PageProps<'/me'>) => {
  const { done } = await searchParams;
  const t = await getTranslations('account');
  const settings = await settingsFor(session);
  const sessions = await listSessions(database(), session.actor.personId, new Date(), LISTED);
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        {done === 'secret' && (
          <p role="status" className={ui.notice}>
            {t('secretDone')}
          </p>
        )}
        <Person session={session} />
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="secret">
          <h2 id="secret">{t('secretTitle')}</h2>
          <SecretForm session={session} />
        </section>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="sessions">
          <h2 id="sessions">{t('sessionsTitle')}</h2>
          <SessionList sessions={sessions} ownId={session.id} settings={settings} />
        </section>
        <YourData session={session} settings={settings} />
      </main>
    </>
  );
});

async function Person({ session: { name, address, memberships } }: { session: Session }) {
  const t = await getTranslations('account');
  const roles = await getTranslations('roles');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="person">
      <h2 id="person">{t('personTitle')}</h2>
      <p>{t('signInName', { name: shownName(address) })}</p>
      <ul className={styles.places}>
        {memberships.map((one) => (
          <li key={one.organizationId}>
            {t('place', {
              organization: one.name,
              roles: parseRoles(one.role)
                .map((role) => roles(role))
                .join(', '),
            })}
          </li>
        ))}
      </ul>
      {memberships.length === 0 && <p>{t('noPlace')}</p>}
      <ActForm
        className={ui.stack}
        action={renameSelf}
        submit={t('rename')}
        failed={problems('no-answer')}
        done={t('renamed')}
      >
        <Field
          label={t('name')}
          name="name"
          defaultValue={name}
          required
          maxLength={LONGEST_NAME}
          autoComplete="name"
        />
      </ActForm>
    </section>
  );
}

async function SecretForm({ session: { address } }: { session: Session }) {
  const t = await getTranslations('account');
  const problems = await getTranslations('problems');
  return (
    <ActForm className={ui.stack} action={changePassword} submit={t('setSecret')} failed={problems('no-answer')}>
      <input type="hidden" name="username" value={shownName(address)} autoComplete="username" />
      <Field
        label={t('presentSecret')}
        name="presentSecret"
        type="password"
        required
        maxLength={200}
        autoComplete="current-password"
      />
      <Field
        label={t('secret')}
        rule={`${t(takesMail(address) ? 'passwordRule' : 'pinRule')} ${t('secretEnds')}`}
        name="secret"
        type="password"
        required
        maxLength={200}
        autoComplete="new-password"
      />
    </ActForm>
  );
}
