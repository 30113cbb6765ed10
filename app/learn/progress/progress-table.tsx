import { useTranslations } from 'next-intl';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { type AbilityRange, againstLine } from '@/lib/competency/progress';
import { inLogits, percent } from './numbers';
import styles from './progress.module.css';
import type { LineOfTopic } from './progress-view';

const columns = [
  'colAbility',
  'colInterval',
  'colFading',
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
  if (!shown)
    return (
      <td data-label={t('colInterval')} colSpan={columns.length}>
        {t('untested')}
      </td>
    );
  const intervalOf = ({ low, high }: AbilityRange) => t('interval', { low: inLogits(low), high: inLogits(high) });
  const cells: Record<(typeof columns)[number], string | number> = {
    colAbility: inLogits(shown.mean),
    colInterval: intervalOf(shown),
    colFading: shown.before ? intervalOf(shown.before) : none,
    colLine: cut === undefined ? none : inLogits(cut),
    colAgainst: cut === undefined ? none : t(againstLine(shown, cut)),
    colResponses: shown.responses,
    colCases: shown.cases,
    colMean: t('percent', { percent: percent(shown.meanShare) }),
    colNewest: shownDate(new Date(shown.newestAt), settings),
  };
  return columns.map((column) => (
    <td key={column} data-label={t(column)}>
      {cells[column]}
    </td>
  ));
}
