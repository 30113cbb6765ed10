import { useTranslations } from 'next-intl';
import type { Drawing, Place, Point } from '@/lib/rig/drawing';
import type { RigElement } from '@/lib/rig/element';
import type { Rig } from '@/lib/rig/rig';
import styles from './drawing.module.css';
import { linePath, routeLine } from './route-line';
import { ElementSymbol, HALF_LENGTH } from './symbol';

type Side = Rig['nodes'][number]['side'];

const SIDE_CLASS: Record<Side, string | undefined> = {
  ambient: styles.low,
  suction: styles.suction,
  low: styles.low,
  high: styles.high,
  return: styles.return,
};

/** Height above the parts that only the ports need. */
const PORT_ROOM = 52;

/** The line drawing of a rig, made from its graph. `faulty` is the element that a debrief points out. */
export function RigDrawing({
  rig,
  drawing,
  faulty,
  taps = false,
}: {
  rig: Rig;
  drawing: Drawing;
  faulty?: string;
  /** Show where the ports tap in. */
  taps?: boolean;
}) {
  const t = useTranslations('drawing');
  const faultyName = rig.elements.find(({ id }) => id === faulty)?.text.en;
  const top = taps ? 0 : PORT_ROOM;
  const sides = new Map(rig.nodes.map(({ id, side }) => [id, side]));
  const mark = faulty === undefined ? undefined : markOf(drawing, faulty);
  return (
    <svg
      className={styles.svg}
      viewBox={`0 ${top} ${drawing.width} ${drawing.height - top}`}
      role="img"
      aria-label={`${t('label', { rig: rig.text.en.name })}${faultyName ? `. ${t('faulty', { part: faultyName })}` : ''}`}
    >
      {Object.entries(drawing.nodes).map(([id, line]) => (
        <path key={id} className={SIDE_CLASS[sides.get(id) ?? 'low']} d={linePath(line)} />
      ))}
      {rig.elements.map((element) => (
        <Lines key={element.id} element={element} drawing={drawing} sides={sides} />
      ))}
      {taps &&
        Object.entries(drawing.ports).map(([id, { at, tap }]) => (
          <path key={id} className={styles.tap} d={linePath([tap, at])} />
        ))}
      {mark && <circle className={styles.faulty} cx={mark[0]} cy={mark[1]} r="38" />}
      {rig.elements.map((element) => (
        <Part key={element.id} element={element} place={drawing.elements[element.id]} />
      ))}
    </svg>
  );
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

function Part({ element, place }: { element: RigElement; place: Place | undefined }) {
  if (!place || !('at' in place)) return null;
  const [x, y] = place.at;
  const { label } = place;
  return (
    <>
      <g transform={`translate(${x} ${y}) rotate(${place.turn})`}>
        <ElementSymbol kind={place.symbol ?? element.kind} />
      </g>
      {label && (
        <text className={styles.label} x={label.at[0]} y={label.at[1]} textAnchor={label.anchor}>
          {(label.lines ?? [element.text.en]).map((line, i) => (
            <tspan key={line} x={label.at[0]} dy={i === 0 ? 0 : 16}>
              {line}
            </tspan>
          ))}
          {element.kind === 'filter' && (
            <tspan className={styles.rating} x={label.at[0]} dy={16}>
              {`${element.ratingUm} µm`}
            </tspan>
          )}
        </text>
      )}
    </>
  );
}

/** Where an element can be pointed at, following it into the symbol it is part of. */
function markOf(drawing: Drawing, element: string): Point | undefined {
  const place = drawing.elements[element];
  if (!place) return undefined;
  if ('within' in place) return markOf(drawing, place.within);
  if ('at' in place) return place.at;
  return place.via[Math.floor(place.via.length / 2)];
}
