import { useTranslations } from 'next-intl';
import type { ReadingItem } from '@/app/_server/attempt-view';
import { showAtResolution, withUnit } from './show-quantity';

/** A reading as it stands on the job card: what was read off a scale, or what a screen printed. */
export function ItemValue({ item }: { item: ReadingItem }) {
  const t = useTranslations('findings');
  const { shown, finding, gauge } = item;
  switch (shown.kind) {
    case 'codes':
      return t('codeCount', { count: shown.codes.length });
    case 'destroyed':
      return t('destroyed');
    case 'off-scale': {
      const value = withUnit(String(shown.limit), shown.unit);
      return shown.end === 'high' ? t('over', { value }) : t('under', { value });
    }
    case 'value':
      if (finding?.entered) return withUnit(String(finding.entered.value), finding.entered.unit);
      if (gauge?.display === 'digital') return withUnit(showAtResolution(shown.value, gauge.resolution), shown.unit);
      return gauge?.display === 'sight' ? t('byEye') : null;
  }
}
