import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import type { TurnLine } from '@/app/_server/review/turn-lines';
import lines from '@/app/_ui/lines.module.css';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import styles from './review.module.css';
import { WhoWords } from './who-words';

/** Turns that were handed in, each with the ways to its cases and questions. */
export async function TurnList({
  turns,
  settings,
  limit,
}: {
  turns: readonly TurnLine[];
  settings: OrganizationSettings;
  limit: number;
}) {
  const t = await getTranslations('review');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="turns">
      <h2 id="turns">{t('turns')}</h2>
      {turns.length === 0 && <p>{t('noTurns')}</p>}
      <ul className={lines.lines}>
        {turns.map(({ id, assignment, number, who, handedInAt, demo, seen, attemptIds, sittingId }) => (
          <li key={id}>
            <span>
              <b>
                <WhoWords who={who} />
              </b>{' '}
              <span className={ui.small}>
                {[
                  t('atAssignment', { title: assignment.title, number }),
                  ...(handedInAt ? [shownTime(handedInAt, settings)] : []),
                  ...(demo ? [t('demo')] : []),
                  ...(seen ? [t('seen')] : []),
                ].join(' · ')}
              </span>
            </span>
            <span className={styles.works}>
              {attemptIds.map((attemptId, index) => (
                <Link key={attemptId} className={styles.way} href={`/review/attempts/${attemptId}`} prefetch={false}>
                  {t('caseNumber', { number: index + 1 })}
                </Link>
              ))}
              {sittingId && (
                <Link className={styles.way} href={`/review/sittings/${sittingId}`} prefetch={false}>
                  {t('questions')}
                </Link>
              )}
            </span>
          </li>
        ))}
      </ul>
      {turns.length === limit && <p className={ui.small}>{t('latest', { count: limit })}</p>}
    </section>
  );
}
