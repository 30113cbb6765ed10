import { useTranslations } from 'next-intl';
import { shownTime } from '@/app/_ui/shown-date';
import type { LogEntry } from '@/db/queries/log-entries';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import type { EntryTeller } from './entry-teller';
import styles from './log.module.css';

/** Entries of the log, each in a sentence. */
export function LogTable({
  entries,
  teller,
  settings,
}: {
  entries: readonly LogEntry[];
  teller: EntryTeller;
  settings: OrganizationSettings;
}) {
  const t = useTranslations('log');
  return (
    <table className={styles.entries}>
      <thead>
        <tr>
          <th scope="col">{t('colWhen')}</th>
          <th scope="col">{t('colWhat')}</th>
        </tr>
      </thead>
      <tbody>
        {entries.map((entry) => (
          <tr key={entry.seq}>
            <td className={styles.when}>
              <time dateTime={entry.at.toISOString()}>{shownTime(entry.at, settings)}</time>
            </td>
            <td>
              {teller.sentence(entry)}
              <Details details={teller.details(entry)} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Details({ details }: { details: readonly { name: string; value: string }[] }) {
  if (details.length === 0) return null;
  return <p className={styles.details}>{details.map(({ name, value }) => `${name}: ${value}`).join(' · ')}</p>;
}
