import { useTranslations } from 'next-intl';
import type { FigureView, PictureView } from '@/app/_server/questions/figure-view';
import type { UnitChoice } from '../display-choices';
import { Instrument } from '../gauges/instrument';
import { TroubleCodes } from '../trouble-codes';
import { DrawingFigure } from './drawing-figure';
import styles from './figure.module.css';
import { LimitsFigure } from './limits-figure';
import { ReadingsFigure } from './readings-figure';
import { TraceFigure } from './trace-figure';
import { InLine } from './words';

/**
 * What a question shows beside its words.
 *
 * @param over   Lies on a drawing, a chart or a picture, in shares of its size.
 * @param told   Whether codes are told with what they mean: after the mark alone, since that may have been asked.
 */
export function QuestionFigure({
  figure,
  units,
  over,
  told = false,
}: {
  figure: FigureView;
  units: UnitChoice;
  over?: React.ReactNode;
  told?: boolean;
}) {
  switch (figure.figure) {
    case 'drawing':
      return <DrawingFigure on={figure} over={over} />;
    case 'instrument':
      return <Showing figure={figure} units={units} />;
    case 'trace':
      return <TraceFigure on={figure} units={units} over={over} />;
    case 'readings':
      return <ReadingsFigure readings={figure.readings} units={units} />;
    case 'codes':
      return told ? <TroubleCodes codes={figure.codes} /> : <Codes codes={figure.codes} />;
    case 'limits':
      return <LimitsFigure limits={figure.limits} units={units} />;
    case 'scene':
      return <Scene figure={figure} />;
    case 'table':
      return <Table figure={figure} />;
    case 'picture':
      return <PictureFigure on={figure} over={over} />;
  }
}

type FigureOf<F extends FigureView['figure']> = Extract<FigureView, { figure: F }>;

function Showing({ figure, units }: { figure: FigureOf<'instrument'>; units: UnitChoice }) {
  const { gauge, shown, label, grades } = figure;
  const lines = 'lines' in shown ? (shown.lines ?? []) : [];
  return <Instrument gauge={gauge} shown={shown} label={label} units={units} grades={grades} lines={lines} />;
}

function Codes({ codes }: { codes: FigureOf<'codes'>['codes'] }) {
  return (
    <ul className={styles.codes}>
      {codes.map(({ spn, fmi }) => (
        <li key={`${spn}-${fmi}`}>{`SPN ${spn} · FMI ${fmi}`}</li>
      ))}
    </ul>
  );
}

function Scene({ figure: { facts, place } }: { figure: FigureOf<'scene'> }) {
  return (
    <div className={styles.figure}>
      <ul className={styles.facts}>
        {facts.map((fact, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: facts are never reordered
          <li key={index}>
            <InLine said={fact} />
          </li>
        ))}
      </ul>
      {place && <DrawingFigure on={place} />}
    </div>
  );
}

function Table({ figure: { head, rows } }: { figure: FigureOf<'table'> }) {
  const t = useTranslations('questions');
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard
    <section className={styles.scroll} aria-label={t('table')} tabIndex={0}>
      <table className={styles.table}>
        <thead>
          <tr>
            {head.map((said, column) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: columns are never reordered
              <th key={column} scope="col">
                <InLine said={said} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows are never reordered
            <tr key={index}>
              {row.map((said, column) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: columns are never reordered
                <td key={column}>
                  <InLine said={said} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** An uploaded picture. `over` lies on it, in shares of its size. */
export function PictureFigure({ on, over }: { on: PictureView; over?: React.ReactNode }) {
  const { picture, width, height, alt } = on;
  return (
    <div className={styles.photo}>
      {/* biome-ignore lint/performance/noImgElement: behind a door of our own, which the framework's optimiser has no key to */}
      <img src={`/pictures/${encodeURIComponent(picture)}`} width={width} height={height} alt={alt} />
      {over}
    </div>
  );
}
