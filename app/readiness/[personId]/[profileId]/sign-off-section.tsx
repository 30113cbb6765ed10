import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import type { SignedInPermit } from '@/app/_server/permit';
import { obstacleSentence } from '@/app/_server/readiness/obstacle-sentence';
import type { Report } from '@/app/_server/readiness/read-report';
import { ActForm } from '@/app/_ui/act-form';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import { listNames } from '@/db/queries/names';
import type { StoredSignOff } from '@/db/queries/sign-offs';
import { can } from '@/lib/accounts/can';
import styles from '../../readiness.module.css';
import { signOff, takeBackSignOff } from './actions';
import { TakeBack } from './take-back';

/** Who answers for it that somebody may be trusted with the role: a person, never the tool. */
export async function SignOffSection({ report, permit }: { report: Report; permit: SignedInPermit }) {
  const { obstacles, profile, signOffs } = report;
  const t = await getTranslations('readiness.report');
  const maySign = can(permit.session.actor, 'readiness.sign', permit.resource);
  const sentences = await Promise.all(obstacles.map((one) => obstacleSentence(one, profile)));
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="sign-off">
      <h2 id="sign-off">{t('signTitle')}</h2>
      {!report.signOff && <p>{t('noSignOff')}</p>}
      {signOffs.map((one) => (
        <SignedLine key={one.id} signOff={one} report={report} mayTakeBack={maySign} />
      ))}
      {sentences.length > 0 && (
        <>
          <h3>{t('obstaclesTitle')}</h3>
          <ul className={styles.lines}>
            {sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      {!maySign && <p className={ui.small}>{t('mayNotSign')}</p>}
      {maySign && sentences.length === 0 && <SignForm report={report} />}
    </section>
  );
}

async function SignedLine({
  signOff: one,
  report,
  mayTakeBack,
}: {
  signOff: StoredSignOff;
  report: Report;
  mayTakeBack: boolean;
}) {
  const { settings, person, standing, at } = report;
  const t = await getTranslations('readiness.report');
  const decisions = await getTranslations('readiness.decisions');
  const whom = [one.signedBy, one.takenBackBy].filter((id) => id !== null);
  const names = new Map((await listNames(database(), person.organizationId, whom)).map(({ id, name }) => [id, name]));
  const nameOf = (id: string | null) => names.get(id ?? '') ?? t('erased');
  const hasEnded = one.endsAt <= at;
  const facts = {
    by: nameOf(one.signedBy),
    date: shownDate(one.signedAt, settings),
    until: shownDate(one.endsAt, settings),
    comment: one.comment,
  };
  return (
    <div className={`${styles.check} ${ui.stack}`}>
      <p>{t(hasEnded ? 'ended' : 'signedUntil', facts)}</p>
      <p className={ui.small}>
        {t('signedUnder', { version: one.profile.version, decision: decisions(one.standing.decision) })}
      </p>
      {one.takenBackAt && (
        <p className={ui.notice}>
          {t('takenBack', {
            date: shownDate(one.takenBackAt, settings),
            by: nameOf(one.takenBackBy),
            reason: one.takenBackReason ?? '',
          })}
        </p>
      )}
      {report.signOff?.id === one.id && standing.decision !== 'ready' && (
        <p className={ui.notice}>{t('sinceChanged')}</p>
      )}
      {mayTakeBack && !one.takenBackAt && !hasEnded && (
        <TakeBack action={takeBackSignOff} name="signOffId" value={one.id} />
      )}
    </div>
  );
}

async function SignForm({ report: { person, profile, standing } }: { report: Report }) {
  const t = await getTranslations('readiness.report');
  const problems = await getTranslations('problems');
  const decisions = await getTranslations('readiness.decisions');
  const safety = t(`safety.${standing.safety.code}`, { ...standing.safety, atLeast: profile.safety.atLeast });
  return (
    <>
      <p className={ui.prose}>
        {t('signBody', {
          name: person.name,
          role: profile.text.en.name,
          decision: decisions(standing.decision),
          topics: standing.topics.length,
          safety,
          months: profile.validMonths,
        })}
      </p>
      <ActForm
        className={ui.stack}
        action={signOff}
        submit={t('sign')}
        failed={problems('no-answer')}
        done={t('signedDone')}
        clears
      >
        <input type="hidden" name="personId" value={person.userId} />
        <input type="hidden" name="profileId" value={profile.id} />
        <input type="hidden" name="version" value={profile.version} />
        <label className={ui.field}>
          <span>{t('signComment')}</span>
          <textarea name="comment" rows={3} maxLength={1000} required />
        </label>
        <label className={styles.tick}>
          <input type="checkbox" name="confirmed" value="yes" required />
          {t('signConfirm')}
        </label>
      </ActForm>
    </>
  );
}
