import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import type { Session } from '@/app/_server/session';
import { ActForm } from '@/app/_ui/act-form';
import styles from '@/app/_ui/lines.module.css';
import ui from '@/app/_ui/ui.module.css';
import { type Class, type ClassPerson, listClassPeople, listWithoutPlace } from '@/db/queries/classes';
import { can } from '@/lib/accounts/can';
import { parseRoles } from '@/lib/accounts/roles';
import { shownName } from '@/lib/accounts/sign-in-name';
import { giveClassPlace, takeClassPlace } from '../actions';

/** More people than a class, or an organisation's list, holds. */
const LISTED = 500;

/** Who is in a class, and who can be added to it. */
export async function ClassPeople({ session, found, changes }: { session: Session; found: Class; changes: boolean }) {
  const people = await listClassPeople(database(), found, LISTED);
  const t = await getTranslations('classes');
  const problems = await getTranslations('problems');
  const { organizationId } = found;
  const opens = can(session.actor, 'people.see', { kind: 'organization', organizationId });
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="people">
      <h2 id="people">{t('peopleTitle', { count: people.length })}</h2>
      {people.length === 0 && <p>{t('nobody')}</p>}
      <ul className={styles.lines}>
        {people.map((person) => (
          <li key={person.id}>
            {opens ? (
              <Link className={styles.way} href={`/people/${person.id}`} prefetch={false}>
                {person.name}
              </Link>
            ) : (
              person.name
            )}
            <span className={ui.small}>
              {shownName(person.address)} · <Roles role={person.role} />
              {person.deactivatedAt && ` · ${t('deactivated')}`}
            </span>
            {changes && (
              <ActForm
                className={styles.onScreen}
                action={takeClassPlace}
                submit={t('take', { name: person.name })}
                failed={problems('no-answer')}
                quiet
              >
                <input type="hidden" name="classId" value={found.id} />
                <input type="hidden" name="personId" value={person.id} />
              </ActForm>
            )}
          </li>
        ))}
      </ul>
      {changes && !found.archivedAt && <GivePlace found={found} />}
    </section>
  );
}

async function GivePlace({ found }: { found: Class }) {
  const others = await listWithoutPlace(database(), found, LISTED);
  const t = await getTranslations('classes');
  const problems = await getTranslations('problems');
  if (others.length === 0) return <p className={`${ui.small} ${styles.onScreen}`}>{t('everybody')}</p>;
  return (
    <ActForm
      className={`${ui.stack} ${styles.onScreen}`}
      action={giveClassPlace}
      submit={t('give')}
      failed={problems('no-answer')}
      done={t('given')}
      quiet
    >
      <input type="hidden" name="classId" value={found.id} />
      <label className={ui.field}>
        <span>{t('giveTo')}</span>
        <select name="personId" required defaultValue="">
          <option value="" disabled>
            {t('choose')}
          </option>
          {others.map(({ id, name, address }: ClassPerson) => (
            <option key={id} value={id}>
              {name} · {shownName(address)}
            </option>
          ))}
        </select>
      </label>
    </ActForm>
  );
}

async function Roles({ role }: { role: string }) {
  const t = await getTranslations('roles');
  return parseRoles(role)
    .map((one) => t(one))
    .join(', ');
}
