import { useTranslations } from 'next-intl';
import ui from '@/app/_ui/ui.module.css';
import type { Named } from '@/db/queries/names';
import { logEvents } from '@/lib/accounts/log-events';
import styles from './log.module.css';
import { CONSOLE, type LogQuery } from './parse-log-query';

/** Asks for some of the log. A plain form: the address says what is asked. */
export function LogFilterForm({ asked, people }: { asked: LogQuery['asked']; people: readonly Named[] }) {
  const t = useTranslations('log');
  const persons = people.map(({ id, name }) => ({ value: id, label: name }));
  return (
    <form action="/log" className={styles.filter}>
      <Select
        name="event"
        value={asked.event}
        options={logEvents.map((value) => ({ value, label: t(`events.${value}`) }))}
      />
      <Select name="actor" value={asked.actor} options={[{ value: CONSOLE, label: t('console') }, ...persons]} />
      <Select name="person" value={asked.person} options={persons} />
      <label className={ui.field}>
        <span>{t('fields.from')}</span>
        <input type="date" name="from" defaultValue={asked.from} />
      </label>
      <label className={ui.field}>
        <span>{t('fields.to')}</span>
        <input type="date" name="to" defaultValue={asked.to} />
      </label>
      <button type="submit" className={ui.primary}>
        {t('show')}
      </button>
    </form>
  );
}

function Select({
  name,
  value,
  options,
}: {
  name: 'event' | 'actor' | 'person';
  value: string | undefined;
  options: readonly { value: string; label: string }[];
}) {
  const t = useTranslations('log');
  return (
    <label className={ui.field}>
      <span>{t(`fields.${name}`)}</span>
      <select name={name} defaultValue={value ?? ''}>
        <option value="">{t('any')}</option>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </label>
  );
}
