import { useTranslations } from 'next-intl';
import styles from './gauges.module.css';

/** A gauge that saw more than it survives: broken glass, bent needle, nothing to read. */
export function DestroyedGauge({ name }: { name: string }) {
  const t = useTranslations('gauges');
  return (
    <svg className={styles.instrument} viewBox="0 0 260 260" role="img" aria-label={t('destroyed', { name })}>
      <circle className={styles.rim} cx="130" cy="130" r="118" />
      <path
        className={styles.crack}
        d="M150 96L98 40L86 62M150 96L232 74L244 96M150 96L206 178L190 226M150 96L112 168L66 196"
      />
      <path className={styles.crack} d="M112 168L206 178M98 40L232 74" />
      <path
        d="M130 130L176 120L196 96L214 116"
        fill="none"
        stroke="var(--ink)"
        strokeWidth="4"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
      <circle className={styles.hub} cx="130" cy="130" r="7" />
    </svg>
  );
}
