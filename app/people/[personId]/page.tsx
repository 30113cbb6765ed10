import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { memberNamed, type NamedMember } from '@/app/_server/people/change-member';
import { shownDate, shownTime } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listAttempts } from '@/db/queries/attempts';
import { findLastSignIn, listPlaces } from '@/db/queries/people';
import { can } from '@/lib/accounts/can';
import { parseRoles } from '@/lib/accounts/roles';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { shownName } from '@/lib/accounts/sign-in-name';
import { parseCaseCode } from '@/lib/cases/case-code';
import styles from '../people.module.css';
import { MemberActs } from './member-acts';

/** As many cases as one looks back over. */
const LISTED = 50;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('people');
  return { title: t('title') };
}

/** One person of the organisation: who they are, what they did, and what may be done about them. */
export default page('/people/[personId]', async (permit) => {
  const person = await memberNamed(permit);
  const settings = await settingsFor(permit.session);
  const t = await getTranslations('people');
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{person.name}</h1>
        <section className={`${ui.panel} ${ui.stack}`} aria-label={person.name}>
          <Facts person={person} settings={settings} />
        </section>
        <Cases person={person} settings={settings} />
        {can(permit.session.actor, 'readiness.see', permit.resource) && (
          <p>
            <Link className={styles.way} href={`/people/${person.userId}/progress`} prefetch={false}>
              {t('progressLink', { name: person.name })}
            </Link>
          </p>
        )}
        <MemberActs permit={permit} person={person} />
        <p>
          <Link className={styles.way} href="/people" prefetch={false}>
            {t('back')}
          </Link>
        </p>
      </main>
    </>
  );
});

async function Facts({ person, settings }: { person: NamedMember; settings: OrganizationSettings }) {
  const { organizationId, userId, address, role, deactivatedAt, erasureAskedAt } = person;
  const lastSignIn = await findLastSignIn(database(), person);
  const places = await listPlaces(database(), organizationId, [userId]);
  const t = await getTranslations('people');
  const roles = await getTranslations('roles');
  return (
    <>
      <p>
        {t('signsInAs', { name: shownName(address) })} ·{' '}
        {parseRoles(role)
          .map((one) => roles(one))
          .join(', ')}{' '}
        · {deactivatedAt ? t('deactivated') : t('active')}
      </p>
      {places.length > 0 && <p>{t('inClasses', { names: places.map(({ name }) => name).join(', ') })}</p>}
      <p className={ui.small}>
        {lastSignIn ? t('lastSignIn', { when: shownTime(lastSignIn, settings) }) : t('noSignIn')}
      </p>
      {erasureAskedAt && (
        <p className={ui.notice}>{t('erasureSince', { when: shownDate(erasureAskedAt, settings) })}</p>
      )}
    </>
  );
}

async function Cases({
  person: { organizationId, userId },
  settings,
}: {
  person: NamedMember;
  settings: OrganizationSettings;
}) {
  const attempts = await listAttempts(database(), { learnerId: userId, organizationId }, LISTED);
  const t = await getTranslations('people');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="cases">
      <h2 id="cases">{t('casesTitle')}</h2>
      {attempts.length === 0 && <p>{t('noCases')}</p>}
      {attempts.length === LISTED && <p className={ui.small}>{t('latest', { count: LISTED })}</p>}
      {attempts.length > 0 && (
        <table className={styles.people}>
          <thead>
            <tr>
              <th scope="col">{t('colCase')}</th>
              <th scope="col">{t('colSystem')}</th>
              <th scope="col">{t('colStarted')}</th>
              <th scope="col">{t('colPoints')}</th>
            </tr>
          </thead>
          <tbody>
            {attempts.map(({ id, caseCode, createdAt, total }) => (
              <tr key={id}>
                <td className={ui.code}>{caseCode}</td>
                <td data-label={t('colSystem')}>{systemOf(caseCode) ?? '–'}</td>
                <td data-label={t('colStarted')}>{shownDate(createdAt, settings)}</td>
                <td data-label={t('colPoints')}>{total === null ? t('openCase') : t('points', { points: total })}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

/** Undefined where the system is no longer among the content. */
function systemOf(caseCode: string): string | undefined {
  const parsed = parseCaseCode(caseCode, catalogue());
  return 'spec' in parsed ? catalogue().rigs.get(parsed.spec.rig)?.text.en.name : undefined;
}
