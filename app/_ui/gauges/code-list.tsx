import { useTranslations } from 'next-intl';
import { TroubleCodes } from '../trouble-codes';
import styles from './gauges.module.css';

/** The stored codes as a reader on the bus lists them. */
export function CodeList({ codes }: { codes: readonly { spn: number; fmi: number }[] }) {
  const t = useTranslations('gauges');
  return (
    <div className={styles.screen}>{codes.length === 0 ? <p>{t('noCodes')}</p> : <TroubleCodes codes={codes} />}</div>
  );
}
