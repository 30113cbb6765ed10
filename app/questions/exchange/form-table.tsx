import { useTranslations } from 'next-intl';
import { lossesOf } from '@/lib/interop/qti/terms';
import { csvForms } from '@/lib/interop/questions-csv/columns';
import { type WrittenForm, writtenForms } from '@/lib/questions/written/written-forms';
import styles from '../questions.module.css';

/** What there is of each form, and what of it a package or a row cannot tell others. */
export function FormTable({ counts }: { counts: ReadonlyMap<WrittenForm, number> }) {
  const t = useTranslations('exchange');
  const forms = useTranslations('written.forms');
  return (
    <table className={styles.questions}>
      <caption className={styles.sub}>{t('formsCaption')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('colForm')}</th>
          <th scope="col">{t('colCount')}</th>
          <th scope="col">{t('colPackage')}</th>
          <th scope="col">{t('colCsv')}</th>
        </tr>
      </thead>
      <tbody>
        {writtenForms.map((form) => (
          <tr key={form}>
            <td>{forms(form)}</td>
            <td data-label={t('colCount')}>{counts.get(form) ?? 0}</td>
            <td data-label={t('colPackage')}>
              {lossesOf(form).map((loss) => (
                <span key={loss} className={styles.sub}>
                  {t(`losses.${loss}`)}
                </span>
              ))}
            </td>
            <td data-label={t('colCsv')}>
              {csvForms.some((known) => known === form) ? t('csvPictures') : t('csvNone')}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
