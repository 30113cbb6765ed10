import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import type { SignedInPermit } from '@/app/_server/permit';
import { listHeldProfiles } from '@/app/_server/profiles';
import type { Report } from '@/app/_server/readiness/read-report';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import { listNames } from '@/db/queries/names';
import type { StoredObservation } from '@/db/queries/observations';
import { can } from '@/lib/accounts/can';
import styles from '../../readiness.module.css';
import { takeBackObservation } from './actions';
import { TakeBack } from './take-back';

/** What somebody was seen doing with their hands, for this role or another. */
export async function HandsOnChecks({ report, permit }: { report: Report; permit: SignedInPermit }) {
  const { checks, profile, person } = report;
  const t = await getTranslations('readiness.report');
  const mayWrite = can(permit.session.actor, 'observations.write', permit.resource);
  const held = await listHeldProfiles(database(), person.organizationId);
  const roles = new Map(held.map((one) => [one.profile.id, one.profile.text.en.name]));
  const isOneself = permit.session.actor.personId === person.userId;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="hands-on">
      <h2 id="hands-on">{t('handsOnTitle')}</h2>
      {!profile.handsOn && <p className={ui.small}>{t('noHandsOnAsked')}</p>}
      {checks.length === 0 && <p>{t('handsOnNone')}</p>}
      <ul className={styles.checks}>
        {checks.map((check) => (
          <Check
            key={check.id}
            check={check}
            report={report}
            role={check.profileId === profile.id ? undefined : roles.get(check.profileId ?? '')}
            mayTakeBack={mayWrite && !isOneself}
          />
        ))}
      </ul>
      {mayWrite && !isOneself && (
        <p>
          <Link className={styles.way} href={`/readiness/${person.userId}/${profile.id}/hands-on`} prefetch={false}>
            {t('toHandsOn')}
          </Link>
        </p>
      )}
    </section>
  );
}

async function Check({
  check,
  report,
  role,
  mayTakeBack,
}: {
  check: StoredObservation;
  report: Report;
  /** The role that it was made for, where that is another. */
  role: string | undefined;
  mayTakeBack: boolean;
}) {
  const { settings, person } = report;
  const t = await getTranslations('readiness.report');
  const whom = [check.observedBy, check.takenBackBy].filter((id) => id !== null);
  const names = new Map((await listNames(database(), person.organizationId, whom)).map(({ id, name }) => [id, name]));
  const nameOf = (id: string | null) => names.get(id ?? '') ?? t('erased');
  return (
    <li className={`${styles.check} ${ui.stack}`}>
      <h3>
        {t('check', {
          date: shownDate(check.observedAt, settings),
          by: nameOf(check.observedBy),
          role: role ?? 'none',
        })}
      </h3>
      {check.takenBackAt && (
        <p className={ui.notice}>
          {t('takenBack', {
            date: shownDate(check.takenBackAt, settings),
            by: nameOf(check.takenBackBy),
            reason: check.takenBackReason ?? '',
          })}
        </p>
      )}
      {report.check?.id === check.id && <p className={ui.small}>{t('checkCounts')}</p>}
      {check.unsafe && <p className={ui.alert}>{t('checkUnsafe')}</p>}
      <ul className={styles.lines}>
        {check.items.map(({ id, text, score, outOf, pass }) => (
          <li key={id}>
            {text}: {t('points', { score, outOf, pass, below: score < pass ? 'yes' : 'no' })}
          </li>
        ))}
      </ul>
      <p className={ui.prose}>{check.comment}</p>
      {mayTakeBack && !check.takenBackAt && (
        <TakeBack action={takeBackObservation} name="observationId" value={check.id} />
      )}
    </li>
  );
}
