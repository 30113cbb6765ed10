import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { KeptVersion } from '@/app/_server/schemes';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import styles from '../schemes.module.css';

/** Every version with what changed and why, and what it means for whoever applied before. */
export function SchemeHistory({
  history,
  shown,
  settings,
}: {
  history: readonly KeptVersion[];
  shown: KeptVersion;
  settings: OrganizationSettings;
}) {
  const t = useTranslations('schemes.history');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="history">
      <h2 id="history">{t('title')}</h2>
      <p>{t('body')}</p>
      <ol className={styles.versions}>
        {history.map((version) => {
          const { scheme, changedAt, changer, note } = version;
          return (
            <li key={scheme.version} className={ui.stack}>
              <p>
                {version === shown ? (
                  <strong>{t('shown', { number: scheme.version })}</strong>
                ) : (
                  <Link href={`/schemes/${scheme.id}?version=${scheme.version}`} prefetch={false}>
                    {t('number', { number: scheme.version })}
                  </Link>
                )}{' '}
                <span className={ui.small}>
                  {changedAt ? t('by', { at: shownDate(changedAt, settings), who: changer ?? t('gone') }) : t('first')}
                </span>
              </p>
              {note && <p>{note}</p>}
              <p className={ui.small}>{t('transition', { transition: scheme.text.en.transition })}</p>
            </li>
          );
        })}
      </ol>
    </section>
  );
}
