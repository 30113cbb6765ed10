import Link from 'next/link';
import { useTranslations } from 'next-intl';
import lines from '@/app/_ui/lines.module.css';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { WrittenVersion } from '@/db/queries/written-questions';
import type { OrganizationSettings } from '@/lib/accounts/settings';

/** Every version of a question, newest first. */
export function VersionHistory({
  versions,
  shown,
  names,
  settings,
}: {
  versions: readonly WrittenVersion[];
  shown: WrittenVersion;
  names: ReadonlyMap<string, string>;
  settings: OrganizationSettings;
}) {
  const t = useTranslations('written');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="history">
      <h2 id="history">{t('history')}</h2>
      <ol className={lines.lines} reversed>
        {versions.map((version) => {
          const { id, questionId, number, state, writtenBy, changedAt, reviewedBy, reviewedAt } = version;
          const writer = names.get(writtenBy) ?? t('erased');
          const isApproved = reviewedBy !== null && reviewedAt !== null && (state === 'live' || state === 'retired');
          return (
            <li key={id}>
              {version === shown ? (
                <span>
                  {t('historyLine', { number })}, {t('shown')}
                </span>
              ) : (
                <Link className={lines.way} href={`/questions/${questionId}?version=${number}`} prefetch={false}>
                  {t('historyLine', { number })}
                </Link>
              )}
              <span className={ui.small}>
                {t(`states.${state}`)} · {t('historyBy', { writer, at: shownTime(changedAt, settings) })}
                {isApproved &&
                  ` · ${t('historyReviewed', { reviewer: names.get(reviewedBy) ?? t('erased'), at: shownTime(reviewedAt, settings) })}`}
              </span>
            </li>
          );
        })}
      </ol>
    </section>
  );
}
