import { useTranslations } from 'next-intl';
import type { ReadStatistics } from '@/app/_server/gradebook/read-statistics';
import ui from '@/app/_ui/ui.module.css';

/** How far the whole set can be trusted. */
export function SetFigures({ read: { people, reliability } }: { read: ReadStatistics }) {
  const t = useTranslations('statistics');
  const { alpha, errorOfMeasurement, coefficient, few, items } = reliability;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="whole">
      <h2 id="whole">{t('wholeTitle')}</h2>
      <p>{t('people', { people })}</p>
      {alpha.value === undefined || errorOfMeasurement.value === undefined ? (
        <p>{t(`noReliability.${alpha.why ?? 'no-spread'}`)}</p>
      ) : (
        <>
          <p className={ui.lead}>
            {t('reliability', {
              name: coefficient === 'kr-20' ? 'KR-20' : t('alpha'),
              value: alpha.value.toFixed(2),
              error: ((100 * errorOfMeasurement.value) / items).toFixed(1),
            })}
          </p>
          <p className={ui.small}>{t('reliabilityMeans')}</p>
        </>
      )}
      {few && <p className={ui.small}>{t('few')}</p>}
    </section>
  );
}
