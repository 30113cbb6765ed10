import { useTranslations } from 'next-intl';
import type { Area } from '@/lib/areas';
import styles from './marks.module.css';

/** Areas that a finding clears, struck through, and those that stay suspect, framed. */
export function AreaChips({ clears, suspects }: { clears: readonly Area[]; suspects: readonly Area[] }) {
  const t = useTranslations('areas');
  const say = useTranslations('findings');
  if (clears.length + suspects.length === 0) return null;
  return (
    <ul className={styles.chips}>
      {clears.map((area) => (
        <li key={area} className={`${styles.chip} ${styles.cleared}`}>
          <span className={styles.unseen}>{`${say('clears')}: `}</span>
          <s>{t(area)}</s>
        </li>
      ))}
      {suspects.map((area) => (
        <li key={area} className={`${styles.chip} ${styles.suspect}`}>
          <span className={styles.unseen}>{`${say('suspects')}: `}</span>
          {t(area)}
        </li>
      ))}
    </ul>
  );
}
