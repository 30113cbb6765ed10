import { useTranslations } from 'next-intl';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { againstLine } from '@/lib/competency/progress';
import { inLogits, percent } from './numbers';
import styles from './progress.module.css';
import type { LineOfTopic } from './progress-view';

const columns = [
  'colAbility',
  'colInterval',
  'colLine',
  'colAgainst',
  'colResponses',
  'colCases',
  'colMean',
  'colNewest',
] as const;

/** The bars in numbers. */
export function ProgressTable({ lines, settings }: { lines: readonly LineOfTopic[]; settings: OrganizationSettings }) {
  const t = useTranslations('progress');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="numbers">
      <h2 id="numbers">{t('tableTitle')}</h2>
      <table className={styles.numbers}>
        <caption>{t('tableCaption')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('colTopic')}</th>
            {columns.map((column) => (
              <th key={column} scope="col">
                {t(column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.id}>
              <th scope="row">{line.name}</th>
              <Cells line={line} settings={settings} />
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Cells({ line: { shown, cut }, settings }: { line: LineOfTopic; settings: OrganizationSettings }) {
  const t = useTranslations('progress');
  const none = t('none');
  const cells: Record<(typeof columns)[number], string | number> = {
    colAbility: shown ? inLogits(shown.mean) : none,
    colInterval: shown ? t('interval', { low: inLogits(shown.low), high: inLogits(shown.high) }) : t('untested'),
    colLine: cut === undefined ? none : inLogits(cut),
    colAgainst: shown && cut !== undefined ? t(againstLine(shown, cut)) : none,
    colResponses: shown?.responses ?? 0,
    colCases: shown?.cases ?? 0,
    colMean: shown ? t('percent', { percent: percent(shown.meanShare) }) : none,
    colNewest: shown ? shownDate(new Date(shown.newestAt), settings) : none,
  };
  return columns.map((column) => (
    <td key={column} data-label={t(column)}>
      {cells[column]}
    </td>
  ));
}
