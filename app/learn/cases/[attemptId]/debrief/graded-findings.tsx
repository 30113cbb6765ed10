import { useTranslations } from 'next-intl';
import type { DebriefView, GradedFinding } from '@/app/_server/debrief-view';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { ItemValue } from '@/app/_ui/item-value';
import { displayUnit, showNumber, withUnit } from '@/app/_ui/show-quantity';
import ui from '@/app/_ui/ui.module.css';
import { VerdictMark } from '@/app/_ui/verdict-mark';
import { fromSi } from '@/lib/units';
import styles from './debrief.module.css';
import { WhatFollows } from './what-follows';

/** Each finding: the reading, the limit, what was said, and what follows from it. */
export function GradedFindings({ view, units }: { view: DebriefView; units: UnitChoice }) {
  const t = useTranslations('debrief');
  return (
    <section className={ui.panel} aria-labelledby="graded">
      <div className={ui.head}>
        <h2 id="graded">{t('findings')}</h2>
      </div>
      {view.findings.length === 0 ? (
        <p>{t('noFindings')}</p>
      ) : (
        <table className={styles.findings}>
          <thead>
            <tr>
              <th scope="col">{t('colCheck')}</th>
              <th scope="col">{t('colReading')}</th>
              <th scope="col">{t('colSaid')}</th>
              <th scope="col">{t('colFollows')}</th>
            </tr>
          </thead>
          <tbody>
            {view.findings.map((graded) => (
              <Row key={graded.grade.seq} graded={graded} view={view} units={units} />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function Row({ graded, view, units }: { graded: GradedFinding; view: DebriefView; units: UnitChoice }) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  const { reading, item, grade } = graded;
  return (
    <tr>
      <th scope="row" data-label={t('colCheck')}>
        {reading.check.severalQuantities ? item.label : reading.check.name}
        <span className={styles.under}>{`${run(reading.condition)}, ${reading.instrument.name}`}</span>
      </th>
      <td data-label={t('colReading')} className={styles.number}>
        <Shown graded={graded} units={units} />
        {item.finding?.entered && (
          <span className={styles.under}>
            {t.rich('youReadRich', { value: () => <ItemValue item={item} units={units} /> })}
          </span>
        )}
      </td>
      <td data-label={t('colSaid')}>{item.finding && <VerdictMark verdict={item.finding.verdict} />}</td>
      <td data-label={t('colFollows')}>
        <WhatFollows item={item} grade={grade} rig={view.attempt.face?.rig} units={units} />
      </td>
    </tr>
  );
}

/** What the instrument showed, in the reader's unit, with its doubt. */
function Shown({ graded: { item, grade }, units }: { graded: GradedFinding; units: UnitChoice }) {
  const t = useTranslations('debrief');
  const { shown } = item;
  if (grade.shown === null || item.grades || !('unit' in shown)) return <ItemValue item={item} units={units} />;
  if (shown.kind === 'off-scale') return <ItemValue item={item} units={units} />;
  const unit = displayUnit(units, shown.unit, Math.abs(grade.shown), item.vacuum);
  const doubt = grade.uncertainty === null ? 0 : 2 * spread(grade.uncertainty, unit);
  return (
    <>
      {withUnit(showNumber(fromSi(grade.shown, unit)), unit)}
      {doubt > 0 && (
        <span className={styles.under}>{t('spread', { value: withUnit(doubt.toPrecision(2), unit) })}</span>
      )}
    </>
  );
}

/** A difference in a unit: its zero does not count. */
function spread(si: number, unit: Parameters<typeof fromSi>[1]): number {
  return fromSi(si, unit) - fromSi(0, unit);
}
