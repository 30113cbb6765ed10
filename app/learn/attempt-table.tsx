import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { isSuperseded } from '@/app/_server/history';
import type { Untold, Within } from '@/app/_server/turns/untold';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { AttemptLine } from '@/db/queries/attempts';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import styles from './learn.module.css';

/** A learner's attempts, each with its way on. */
export function AttemptTable({
  attempts,
  untold,
  settings,
}: {
  attempts: readonly AttemptLine[];
  /** Those of which nothing may be told, by their ids. */
  untold: Untold['attempts'];
  settings: OrganizationSettings;
}) {
  const t = useTranslations('learn');
  return (
    <table className={styles.attempts}>
      <thead>
        <tr>
          <th scope="col">{t('colCase')}</th>
          <th scope="col">{t('colStarted')}</th>
          <th scope="col">{t('colState')}</th>
        </tr>
      </thead>
      <tbody>
        {attempts.map((attempt) => (
          <tr key={attempt.id}>
            <td>
              <WayOn attempt={attempt} within={untold.get(attempt.id)} />
              {attempt.demo && <span className={styles.demo}>{t('demo')}</span>}
            </td>
            <td>{shownTime(attempt.createdAt, settings)}</td>
            <td>
              {untold.has(attempt.id) && attempt.total !== null ? (
                t('untold')
              ) : (
                <State attempt={attempt} passMark={settings.passMarks.practice} />
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function WayOn({ attempt, within }: { attempt: AttemptLine; within: Within | undefined }) {
  const t = useTranslations('learn');
  if (within)
    return (
      <Link className={styles.way} href={`/learn/cases/${attempt.id}`} prefetch={false}>
        {within.turn ? t('inTurn', { title: within.turn.assignment.title }) : t('inIntake')}
      </Link>
    );
  const called = attempt.total !== null;
  const kind = called ? 'debrief' : isSuperseded(attempt) ? 'look' : 'goOn';
  return (
    <Link
      className={styles.way}
      href={`/learn/cases/${attempt.id}${called ? '/debrief' : ''}`}
      prefetch={false}
      aria-label={t(kind, { code: attempt.caseCode })}
    >
      <span className={ui.code}>{attempt.caseCode}</span>
    </Link>
  );
}

function State({ attempt, passMark }: { attempt: AttemptLine; passMark: number }) {
  const t = useTranslations('learn');
  const { total } = attempt;
  if (total !== null) return t(total >= passMark ? 'passed' : 'notYet', { total, passMark });
  return isSuperseded(attempt) ? t('superseded') : t('open', { acts: attempt.acts });
}
