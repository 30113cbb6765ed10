import { useTranslations } from 'next-intl';
import type { Drawing, Place, Point } from '@/lib/rig/drawing';
import type { RigElement } from '@/lib/rig/element';
import { findOfKind, type Rig } from '@/lib/rig/rig';
import { BADGE } from './badge-places';
import styles from './drawing.module.css';
import { faultRing } from './fault-ring';
import { type Label, LINE_HEIGHT, labelLines } from './label-lines';
import { linePath, routeLine } from './route-line';
import { sheetBox } from './sheet-box';
import { ElementSymbol, HALF_LENGTH } from './symbol';
import type { Box } from './symbol-box';

type Side = Rig['nodes'][number]['side'];

const SIDE_CLASS: Record<Side, string | undefined> = {
  ambient: styles.low,
  suction: styles.suction,
  low: styles.low,
  high: styles.high,
  return: styles.return,
};

/** A ring, with a letter on its edge where several are told apart by it. */
export interface DrawnMark {
  box: Box;
  letter?: { text: string; at: Point };
}

/** The line drawing of a rig, made from its graph. `faulty` are the elements that a debrief points out. */
export function RigDrawing({
  rig,
  drawing,
  faulty = [],
  taps = [],
  names = true,
  marks = [],
  label,
}: {
  rig: Rig;
  drawing: Drawing;
  faulty?: readonly string[];
  /** Ports that are shown where they tap in. */
  taps?: readonly string[];
  /** Whether the parts are named. */
  names?: boolean;
  marks?: readonly DrawnMark[];
  /** What the drawing shows, where the names of its parts are not to be told. */
  label?: string;
}) {
  const t = useTranslations('drawing');
  const faultyNames = rig.elements.filter(({ id }) => faulty.includes(id)).map(({ text }) => text.en);
  const [left, top, right, bottom] = sheetBox(drawing, taps);
  const told = label ?? t('label', { rig: rig.text.en.name, parts: partNames(rig) });
  const sides = new Map(rig.nodes.map(({ id, side }) => [id, side]));
  const rings = faulty.map((id) => faultRing(drawing, rig, id)).filter((box) => box !== undefined);
  const cylinders = findOfKind(rig, 'injector-return')?.cylinders;
  return (
    <svg
      className={styles.svg}
      viewBox={`${left} ${top} ${right - left} ${bottom - top}`}
      role="img"
      aria-label={`${told}${faultyNames.length > 0 ? `. ${t('faulty', { part: faultyNames.join(', ') })}` : ''}`}
    >
      {Object.entries(drawing.nodes).map(([id, line]) => (
        <path key={id} className={SIDE_CLASS[sides.get(id) ?? 'low']} d={linePath(line)} />
      ))}
      {rig.elements.map((element) => (
        <Lines key={element.id} element={element} drawing={drawing} sides={sides} />
      ))}
      {Object.entries(drawing.ports)
        .filter(([id]) => taps.includes(id))
        .map(([id, { at, tap }]) => (
          <path key={id} className={styles.tap} d={linePath([tap, at])} />
        ))}
      {rings.map(([left, top, right, bottom]) => (
        <rect
          key={`${left} ${top}`}
          className={styles.faulty}
          x={left}
          y={top}
          width={right - left}
          height={bottom - top}
          rx="12"
        />
      ))}
      {rig.elements.map((element) => (
        <Part
          key={element.id}
          element={element}
          place={drawing.elements[element.id]}
          cylinders={cylinders}
          named={names}
        />
      ))}
      {marks.map((mark) => (
        <Ring key={`${mark.letter?.text} ${mark.box}`} mark={mark} />
      ))}
    </svg>
  );
}

/** What the sheet shows, in words; places where something may leak are no parts. */
function partNames({ elements }: Rig): string {
  const parts = elements.filter(({ kind }) => kind !== 'air-leak' && kind !== 'outside-leak');
  return parts.map(({ text }) => text.en).join(', ');
}

/** The lines from an element's two ends to its nodes, or the one that is the element. */
function Lines({ element, drawing, sides }: { element: RigElement; drawing: Drawing; sides: Map<string, Side> }) {
  const place = drawing.elements[element.id];
  if (!place || !('from' in element)) return null;
  if ('via' in place) {
    // A pipe looks like the line it comes from, a leak like the one it leaks into.
    const side = sides.get(element.kind === 'pipe' ? element.from : element.to);
    return <path className={SIDE_CLASS[side ?? 'low']} d={linePath(place.via)} />;
  }
  const half = HALF_LENGTH[element.kind];
  if (!('at' in place) || half === undefined) return null;
  const flow = headingOf(place.turn);
  return [
    { node: element.from, heading: [-flow[0], -flow[1]] as Point },
    { node: element.to, heading: flow },
  ].map(({ node, heading }) => {
    const end: Point = [place.at[0] + heading[0] * half, place.at[1] + heading[1] * half];
    const line = routeLine(end, heading, drawing.nodes[node] ?? []);
    return <path key={node} className={SIDE_CLASS[sides.get(node) ?? 'low']} d={linePath(line)} />;
  });
}

function headingOf(turn: number): Point {
  const radians = (turn * Math.PI) / 180;
  return [Math.round(Math.cos(radians)) + 0, Math.round(Math.sin(radians)) + 0];
}

function Part({
  element,
  place,
  cylinders,
  named,
}: {
  element: RigElement;
  place: Place | undefined;
  cylinders: number | undefined;
  named: boolean;
}) {
  if (!place || !('at' in place)) return null;
  const [x, y] = place.at;
  const { label } = place;
  return (
    <>
      <g transform={`translate(${x} ${y}) rotate(${place.turn})`}>
        <ElementSymbol kind={place.symbol ?? element.kind} {...(cylinders !== undefined && { cylinders })} />
      </g>
      {named && label && <LabelText element={element} label={label} />}
    </>
  );
}

function Ring({
  mark: {
    box: [left, top, right, bottom],
    letter,
  },
}: {
  mark: DrawnMark;
}) {
  return (
    <g>
      <rect className={styles.marked} x={left} y={top} width={right - left} height={bottom - top} rx="12" />
      {letter && (
        <>
          <circle className={styles.badge} cx={letter.at[0]} cy={letter.at[1]} r={BADGE} />
          <text className={styles.letter} x={letter.at[0]} y={letter.at[1] + 5.5} textAnchor="middle">
            {letter.text}
          </text>
        </>
      )}
    </g>
  );
}

function LabelText({ element, label }: { element: RigElement; label: Label }) {
  const [x, y] = label.at;
  const { name, rating } = labelLines(element, label);
  return (
    <text className={styles.label} x={x} y={y} textAnchor={label.anchor}>
      {name.map((line, i) => (
        <tspan key={line} x={x} dy={i === 0 ? 0 : LINE_HEIGHT}>
          {line}
        </tspan>
      ))}
      {rating !== undefined && (
        <tspan className={styles.rating} x={x} dy={LINE_HEIGHT}>
          {rating}
        </tspan>
      )}
    </text>
  );
}
