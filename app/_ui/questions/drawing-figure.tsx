import { useTranslations } from 'next-intl';
import type { DrawingView } from '@/app/_server/questions/figure-view';
import type { Target } from '@/lib/questions/figure';
import type { Rig } from '@/lib/rig/rig';
import { badgePlaces } from '../drawing/badge-places';
import drawn from '../drawing/drawing.module.css';
import { Pan } from '../drawing/pan';
import { type DrawnMark, RigDrawing } from '../drawing/rig-drawing';
import { onSheet, sheetBox } from '../drawing/sheet-box';
import { targetBox } from '../drawing/target-box';
import styles from './figure.module.css';

const PORT = { x: 24, y: 15 };

/**
 * A rig's drawing with what is marked on it. `over` lies on the sheet, in shares of its size.
 *
 * @param first  What a narrow screen shows first; the first mark where it is left out.
 */
export function DrawingFigure({
  on,
  over,
  first = on.marks[0]?.target,
}: {
  on: DrawingView;
  over?: React.ReactNode;
  first?: Target | undefined;
}) {
  const t = useTranslations('drawing');
  const { rig, drawing, names, ports } = on;
  const told = useDrawingText(on);
  return (
    <div className={styles.drawing}>
      <Pan at={first && acrossOf(first, on)} label={t('pan')}>
        <div className={drawn.sheet}>
          <RigDrawing rig={rig} drawing={drawing} taps={ports} names={names} marks={marksOf(on)} label={told} />
          {ports.map((id) => (
            <PortName key={id} id={id} on={on} />
          ))}
          {over}
        </div>
      </Pan>
    </div>
  );
}

/** The middle of something, as a share of the sheet's width; undefined for what is not drawn. */
function acrossOf(target: Target, { drawing, rig }: DrawingView): number | undefined {
  const box = targetBox(target, drawing, rig);
  return box && (box[0] + box[2]) / 2 / drawing.width;
}

function PortName({ id, on: { drawing, ports } }: { id: string; on: DrawingView }) {
  const place = drawing.ports[id];
  if (!place) return null;
  const [x, y] = place.at;
  const { left, top, width, height } = onSheet(
    [x - PORT.x, y - PORT.y, x + PORT.x, y + PORT.y],
    sheetBox(drawing, ports),
  );
  return (
    <span className={styles.port} style={{ left, top, width, height }} aria-hidden="true">
      {id}
    </span>
  );
}

function marksOf({ rig, drawing, names, marks }: DrawingView): DrawnMark[] {
  const ringed = marks.flatMap(({ letter, target }) => {
    const box = targetBox(target, drawing, rig);
    return box ? [{ letter, box }] : [];
  });
  const places = badgePlaces(
    ringed.map(({ box }) => box),
    drawing,
    rig,
    names,
  );
  return ringed.map(({ letter, box }, index) => {
    const at = places[index];
    return letter !== undefined && at ? { box, letter: { text: letter, at } } : { box };
  });
}

/** What the drawing shows: with its names, what is marked; without them, that it is. The question says what to see there. */
function useDrawingText({ rig, names, marks }: DrawingView): string {
  const t = useTranslations('questions.drawing');
  const say = useTranslations('drawing');
  const signs = marks.flatMap(({ letter, target }) => {
    const name = names ? targetName(target, rig) : undefined;
    if (name === undefined) return letter ?? [];
    return letter === undefined ? name : t('marked', { letter, name });
  });
  const about = names
    ? say('label', { rig: rig.text.en.name, parts: rig.elements.map(({ text }) => text.en).join(', ') })
    : t('unnamed', { rig: rig.text.en.name });
  return signs.length === 0 ? about : `${about}. ${t('marks', { marks: signs.join(', ') })}`;
}

function targetName({ what, of }: DrawingView['marks'][number]['target'], rig: Rig): string | undefined {
  if (what === 'port') return rig.ports.find(({ id }) => id === of)?.text.en;
  return what === 'element' ? rig.elements.find(({ id }) => id === of)?.text.en : undefined;
}
