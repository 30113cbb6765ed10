import { useTranslations } from 'next-intl';
import ui from '@/app/_ui/ui.module.css';
import { type Area, areas } from '@/lib/areas';
import type { AreaShares } from '@/lib/grading/grade';
import { percentOf } from './belief-table';
import styles from './charts.module.css';

/** Areas that carry less before and after are not worth a line. */
const SHOWN_FROM = 0.02;

/** Belief per area before and after one reading, those first that carry most after it. */
export function ShareTable({ before, after }: { before: AreaShares; after: AreaShares }) {
  const t = useTranslations('debrief');
  const name = useTranslations('areas');
  const shown = areas
    .filter((area) => Math.max(before[area], after[area]) >= SHOWN_FROM)
    .sort((a: Area, b: Area) => after[b] - after[a]);
  return (
    <table className={`${ui.figures} ${styles.table}`}>
      <caption>{t('shares')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('area')}</th>
          <th scope="col">{t('before')}</th>
          <th scope="col">{t('afterIt')}</th>
        </tr>
      </thead>
      <tbody>
        {shown.map((area) => (
          <tr key={area}>
            <th scope="row">{name(area)}</th>
            <td>{percentOf(before[area])}</td>
            <td>{percentOf(after[area])}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
