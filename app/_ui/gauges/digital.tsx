import { useTranslations } from 'next-intl';
import type { Gauge } from '@/lib/gauges/gauge';
import { showAtResolution } from '../show-quantity';
import styles from './gauges.module.css';

/** A screen that prints its value, or that it cannot. */
export function Digital({
  gauge,
  label,
  shown,
}: {
  gauge: Gauge;
  label: string;
  shown: { value: number; unit: string } | { offScale: 'low' | 'high' };
}) {
  const t = useTranslations('gauges');
  return (
    <div className={styles.screen}>
      <p className={styles.digits}>
        {'value' in shown ? (
          <>
            {showAtResolution(shown.value, gauge.resolution)}
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
