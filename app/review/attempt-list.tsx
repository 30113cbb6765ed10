import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import lines from '@/app/_ui/lines.module.css';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { AttemptWork } from '@/db/queries/review-work';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import styles from './review.module.css';

/** Cases that were practised outside assignments. */
export async function AttemptList({
  attempts,
  settings,
  limit,
}: {
  attempts: readonly AttemptWork[];
  settings: OrganizationSettings;
  limit: number;
}) {
  const t = await getTranslations('review');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="attempts">
      <h2 id="attempts">{t('attempts')}</h2>
      {attempts.length === 0 && <p>{t('noAttempts')}</p>}
      <ul className={lines.lines}>
        {attempts.map(({ id, caseCode, name, total, calledAt, demo, seen }) => (
          <li key={id}>
            <span>
              <b>{name ?? t('erased')}</b>{' '}
              <span className={ui.small}>
                {[
                  t('points100', { total }),
                  shownTime(calledAt, settings),
                  ...(demo ? [t('demo')] : []),
                  ...(seen ? [t('seen')] : []),
                ].join(' · ')}
              </span>
            </span>
            <Link className={`${styles.way} ${ui.code}`} href={`/review/attempts/${id}`} prefetch={false}>
              {t('caseNamed', { code: caseCode })}
            </Link>
          </li>
        ))}
      </ul>
      {attempts.length === limit && <p className={ui.small}>{t('latest', { count: limit })}</p>}
    </section>
  );
}
