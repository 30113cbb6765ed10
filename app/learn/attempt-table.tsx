import Link from 'next/link';
import { useFormatter, useTranslations } from 'next-intl';
import { isSuperseded } from '@/app/_server/history';
import ui from '@/app/_ui/ui.module.css';
import type { AttemptLine } from '@/db/queries/attempts';
import styles from './learn.module.css';

/** A learner's attempts, each with its way on. */
export function AttemptTable({ attempts }: { attempts: readonly AttemptLine[] }) {
  const t = useTranslations('learn');
  const format = useFormatter();
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
              <WayOn attempt={attempt} />
              {attempt.demo && <span className={styles.demo}>{t('demo')}</span>}
            </td>
            <td>{format.dateTime(attempt.createdAt, { dateStyle: 'medium', timeStyle: 'short' })}</td>
            <td>
              <State attempt={attempt} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function WayOn({ attempt }: { attempt: AttemptLine }) {
  const t = useTranslations('learn');
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

function State({ attempt }: { attempt: AttemptLine }) {
  const t = useTranslations('learn');
  if (attempt.total !== null) return t('score', { total: attempt.total });
  return isSuperseded(attempt) ? t('superseded') : t('open', { acts: attempt.acts });
}
