import Link from 'next/link';
import { useTranslations } from 'next-intl';
import lines from '@/app/_ui/lines.module.css';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { SetVersion } from '@/db/queries/sets';
import type { OrganizationSettings } from '@/lib/accounts/settings';

/** Every version of a set, newest first. */
export function SetHistory({
  versions,
  shown,
  settings,
}: {
  versions: readonly SetVersion[];
  shown: SetVersion;
  settings: OrganizationSettings;
}) {
  const t = useTranslations('sets');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="history">
      <h2 id="history">{t('history')}</h2>
      <ol className={lines.lines} reversed>
        {versions.map((version) => {
          const { id, setId, number, changedAt, frozenAt } = version;
          return (
            <li key={id}>
              {version === shown ? (
                <span>
                  {t('version', { number })}, {t('shown')}
                </span>
              ) : (
                <Link className={lines.way} href={`/sets/${setId}?version=${number}`} prefetch={false}>
                  {t('version', { number })}
                </Link>
              )}
              <span className={ui.small}>
                {t('changedAt', { at: shownTime(changedAt, settings) })}
                {frozenAt && ` · ${t('frozenAt', { at: shownTime(frozenAt, settings) })}`}
              </span>
            </li>
          );
        })}
      </ol>
    </section>
  );
}
