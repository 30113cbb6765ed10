import { useTranslations } from 'next-intl';
import styles from './gauges.module.css';

/** A line nut off its seat, and what comes out between them. */
export function JetPicture() {
  const t = useTranslations('gauges');
  return (
    <svg className={styles.instrument} viewBox="0 0 260 200" role="img" aria-label={t('jet')}>
      <path className={styles.glass} d="M30 128H64V112H116V168H64V152H30M64 112V168M82 112V168M99 112V168" />
      <path className={styles.glass} d="M132 122H160V132H236M132 158H160V148H236M132 122V158" />
      <path className={styles.jet} d="M124 108L138 22M122 108L116 18M126 109L164 32" />
      <path className={styles.mist} d="M112 92L86 22M128 92L150 12M130 100L196 40M118 96L100 30" />
      <path className={styles.jet} d="M124 172L130 192" />
    </svg>
  );
}
