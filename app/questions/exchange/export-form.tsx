import { useTranslations } from 'next-intl';
import ui from '@/app/_ui/ui.module.css';
import { exchangedChoices } from '@/db/queries/exchanged-questions';
import styles from '../questions.module.css';

/** Chooses what goes out, and in which of the two forms. */
export function ExportForm({ topics }: { topics: readonly { id: string; name: string }[] }) {
  const t = useTranslations('exchange');
  return (
    <form className={styles.filter} method="get" action="/questions/exchange/package">
      <label className={ui.field}>
        <span>{t('which')}</span>
        <select name="which">
          {exchangedChoices.map((which) => (
            <option key={which} value={which}>
              {t(`choices.${which}`)}
            </option>
          ))}
        </select>
      </label>
      <label className={ui.field}>
        <span>{t('topic')}</span>
        <select name="topic">
          <option value="">{t('anyTopic')}</option>
          {topics.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <button type="submit">{t('exportPackage')}</button>
      <button type="submit" formAction="/questions/exchange/csv">
        {t('exportCsv')}
      </button>
    </form>
  );
}
