import { useTranslations } from 'next-intl';
import type { ReadingItem } from '@/app/_server/attempt-view';
import type { UnitChoice } from './display-choices';
import { readingText } from './reading-text';
import { withUnit } from './show-quantity';

/** A reading as it stands on the job card: what was read off a scale, what a screen printed or what an eye saw. */
export function ItemValue({ item, units }: { item: ReadingItem; units: UnitChoice }) {
  const t = useTranslations('findings');
  const { shown, finding, gauge } = item;
  switch (shown.kind) {
    case 'codes':
      return t('codeCount', { count: shown.codes.length });
    case 'destroyed':
    case 'jet':
      return t(shown.kind);
    case 'off-scale': {
      const value = withUnit(String(shown.limit), shown.unit);
      return shown.end === 'high' ? t('over', { value }) : t('under', { value });
    }
    case 'value':
      if (finding?.entered) return withUnit(String(finding.entered.value), finding.entered.unit);
      return readingText(item, units) ?? (gauge?.display === 'sight' ? t('byEye') : null);
  }
}
