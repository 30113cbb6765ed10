import { useTranslations } from 'next-intl';
import type { Gauge } from '@/lib/gauges/gauge';
import type { Unit } from '@/lib/units';
import styles from './gauges.module.css';

/** A screen that prints its value, or that it cannot. */
export function Digital({
  gauge,
  label,
  shown,
}: {
  gauge: Gauge;
  label: string;
  shown: { digits: string; unit: Unit } | { offScale: 'low' | 'high' };
}) {
  const t = useTranslations('gauges');
  return (
    <div className={styles.screen}>
      <p className={styles.digits}>
        {'digits' in shown ? (
          <>
            {shown.digits}
            <small>{shown.unit === 'count' ? '' : shown.unit}</small>
          </>
        ) : (
          t(`beyond.${shown.offScale}`)
        )}
      </p>
      <p className={styles.screenLabel}>
        <span>{label}</span>
        <span>{gauge.text.en.accuracy}</span>
      </p>
    </div>
  );
}
