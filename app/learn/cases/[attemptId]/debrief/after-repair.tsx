import { useTranslations } from 'next-intl';
import { catalogue } from '@/app/_server/catalogue';
import type { DebriefView } from '@/app/_server/debrief-view';
import { type LimitFacts, limitFacts } from '@/app/_server/limit-facts';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { displayUnit, showNumber, withUnit } from '@/app/_ui/show-quantity';
import ui from '@/app/_ui/ui.module.css';
import { VerdictMark } from '@/app/_ui/verdict-mark';
import type { AfterRepair as Moved } from '@/lib/grading/grade';
import { fromSi, type Unit } from '@/lib/units';
import styles from './debrief.module.css';

/** The readings that prove the repair, computed on the repaired rig. */
export function AfterRepair({ view: { grade }, units }: { view: DebriefView; units: UnitChoice }) {
  const t = useTranslations('debrief');
  const turned = grade.afterRepair.filter(({ verdictBefore, verdictAfter }) => verdictBefore !== verdictAfter);
  const others = grade.afterRepair.filter((moved) => !turned.includes(moved));
  return (
    <section className={ui.panel} aria-labelledby="after">
      <div className={ui.head}>
        <h2 id="after">{t('after')}</h2>
        <span className={ui.small}>{t('afterHint')}</span>
      </div>
      {grade.afterRepair.length === 0 ? <p>{t('afterNone')}</p> : <MovedReadings moved={turned} units={units} />}
      {others.length > 0 && (
        <details className={styles.others}>
          <summary>{t('afterToo', { count: others.length })}</summary>
          <MovedReadings moved={others} units={units} />
        </details>
      )}
    </section>
  );
}

function MovedReadings({ moved, units }: { moved: readonly Moved[]; units: UnitChoice }) {
  return (
    <ul className={styles.moved}>
      {moved.map((one) => (
        <MovedReading key={`${one.check} ${one.condition} ${one.quantity}`} moved={one} units={units} />
      ))}
    </ul>
  );
}

function MovedReading({ moved, units }: { moved: Moved; units: UnitChoice }) {
  const run = useTranslations('conditionsShort');
  const { name, unit, vacuum, grades } = namesOf(moved);
  const shownIn = displayUnit(units, unit, Math.max(Math.abs(moved.before), Math.abs(moved.after)), vacuum);
  const said = (si: number) => (grades ? (grades[si] ?? String(si)) : showNumber(fromSi(si, shownIn)));
  return (
    <li>
      <span className={styles.movedName}>{`${name}, ${run(moved.condition)}`}</span>
      <span
        className={styles.movedValue}
      >{`${said(moved.before)} → ${grades ? said(moved.after) : withUnit(said(moved.after), shownIn)}`}</span>
      <span>
        <VerdictMark verdict={moved.verdictBefore} /> → <VerdictMark verdict={moved.verdictAfter} />
      </span>
    </li>
  );
}

/** What a moved reading is called and measured in, as far as content still knows it. */
function namesOf({ check, quantity, limit }: Moved): LimitFacts & { name: string; unit: Unit } {
  const found = catalogue().checks.get(check);
  const line = [...catalogue().rigs.values()].flatMap(({ limits }) => limits).find(({ id }) => id === limit);
  const several = (found?.quantities.length ?? 0) > 1;
  return {
    name: (several ? found?.text.en.quantities[quantity] : found?.text.en.name) ?? check,
    unit: line?.unit ?? '1',
    ...limitFacts(catalogue(), { check, quantity }),
  };
}
