import { useTranslations } from 'next-intl';
import { parts } from '@/lib/grading/grade';
import type { Change } from '@/lib/regrading/change';

/** A change of marks as a sentence. */
export function ChangeInWords({ change }: { change: Change }) {
  const t = useTranslations('marks');
  const partNames = useTranslations('debrief.parts');
  switch (change.kind) {
    case 'weights': {
      const weights = parts.map((part) => `${partNames(part)} ${change.weights[part]}`).join(', ');
      return t('saysWeights', { weights });
    }
    case 'withdraw':
      return t('saysWithdraw', { place: change.place });
    case 'key':
      return t('saysKey', { place: change.place, count: change.right.length });
  }
}
