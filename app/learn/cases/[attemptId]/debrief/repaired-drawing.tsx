import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import { drawingOf } from '@/app/_server/drawings';
import type { RepairPressures } from '@/app/_server/repair-pressures';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { DrawingPanel } from '@/app/_ui/drawing/drawing-panel';
import { displayUnit, showNumber, withUnit } from '@/app/_ui/show-quantity';
import ui from '@/app/_ui/ui.module.css';
import { fromSi } from '@/lib/units';
import charts from './charts.module.css';
import styles from './debrief.module.css';

/** The true cause on the drawing, with what pressures it made and what they are once it is repaired. */
export function RepairedDrawing({ view, units }: { view: DebriefView; units: UnitChoice }) {
  const { attempt, truths, repaired } = view;
  const rig = attempt.face?.rig;
  if (!rig) return null;
  const faulty = truths.flatMap(({ element }) => element ?? []);
  return (
    <DrawingPanel
      rig={rig}
      drawing={drawingOf(rig.id)}
      faulty={faulty}
      {...(repaired && { pressures: labelsOf(repaired, units) })}
    >
      {repaired && <Pressures view={view} repaired={repaired} units={units} />}
    </DrawingPanel>
  );
}

/** The unit that the drawing's numbers are in; only what is at rail pressure names its own. */
function labelsOf({ ports }: RepairPressures, units: UnitChoice) {
  const usual = displayUnit(units, 'kPa', 0);
  return ports.map(({ port, before, after, moved }) => {
    const unit = displayUnit(units, 'kPa', Math.max(Math.abs(before ?? 0), Math.abs(after)));
    const number = (si: number) => shortNumber(fromSi(si, unit));
    return {
      port,
      before: before === null ? '–' : number(before),
      after: number(after),
      unit: unit === usual ? undefined : unit,
      moved,
    };
  });
}

/** Below ten, two digits: there is little room on the drawing, and the table has the rest. */
function shortNumber(value: number): string {
  const digits = Math.abs(value) < 10 ? Number(value.toPrecision(2)) : Number(value.toPrecision(3));
  return showNumber(digits).replace('-', '−');
}

function Pressures({ view, repaired, units }: { view: DebriefView; repaired: RepairPressures; units: UnitChoice }) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditions');
  const { condition, ports } = repaired;
  return (
    <div className={styles.pressures}>
      <p>{t('pressuresHint', { condition: run(condition), unit: displayUnit(units, 'kPa', 0) })}</p>
      {ports.some(({ before }) => before === null) && <p className={ui.small}>{t('doesNotRun')}</p>}
      <ChooseCondition view={view} repaired={repaired} />
      <details className={charts.more}>
        <summary>{t('pressuresTable')}</summary>
        <PressureTable repaired={repaired} units={units} />
      </details>
    </div>
  );
}

/** Plain links, so that it works without scripts and can be sent to somebody. */
function ChooseCondition({
  view: { attempt },
  repaired: { condition, conditions },
}: {
  view: DebriefView;
  repaired: RepairPressures;
}) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  return (
    <nav aria-label={t('chooseCondition')}>
      <ul className={styles.conditions}>
        {conditions.map((id) => (
          <li key={id}>
            <a
              href={`/learn/cases/${attempt.id}/debrief?${new URLSearchParams({ at: id })}#drawing-title`}
              aria-current={id === condition ? 'true' : undefined}
            >
              {run(id)}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function PressureTable({ repaired: { ports }, units }: { repaired: RepairPressures; units: UnitChoice }) {
  const t = useTranslations('debrief');
  return (
    <table className={`${ui.figures} ${charts.table}`}>
      <thead>
        <tr>
          <th scope="col">{t('port')}</th>
          <th scope="col">{t('beforeRepair')}</th>
          <th scope="col">{t('afterRepair')}</th>
        </tr>
      </thead>
      <tbody>
        {ports.map(({ port, name, before, after }) => {
          const unit = displayUnit(units, 'kPa', Math.max(Math.abs(before ?? 0), Math.abs(after)));
          const said = (si: number) => withUnit(showNumber(fromSi(si, unit)), unit);
          return (
            <tr key={port}>
              <th scope="row">{`${port} · ${name}`}</th>
              <td>{before === null ? '–' : said(before)}</td>
              <td>{said(after)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
