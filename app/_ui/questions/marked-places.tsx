import type { MarkedAnswer, Standing } from '@/app/_server/questions/marked-view';
import type { QuestionView } from '@/app/_server/questions/question-view';
import { isPlaced } from './answer-fields';
import { DrawingFigure } from './drawing-figure';
import { drawnPlaces, shapeAreas } from './figure-places';
import styles from './marked.module.css';
import { Stand } from './marked-answer';
import placed from './placed.module.css';
import { StretchWords } from './placed-fields';
import type { Place } from './placed-group';
import { PictureFigure } from './question-figure';
import { StandingShape } from './standing-mark';
import { stretchArea, TraceFigure } from './trace-figure';
import { InLine } from './words';

type Placed = Extract<MarkedAnswer, { form: 'point' | 'stretch' | 'spot' }>;

/** Whether the figure is shown with the marked answer on it, and not a second time. */
export function isMarkedOnFigure({ answer, figure }: QuestionView): boolean {
  return figure !== undefined && isPlaced(answer, figure);
}

/** What was chosen and what is right, on the figure and in words. */
export function MarkedPlaces({ answer, view }: { answer: Placed; view: QuestionView }) {
  return (
    <div className={styles.part}>
      <MarkedFigure answer={answer} view={view} />
      <ul className={styles.rows}>
        {itemsOf(answer).map(({ id, words, stands }) => (
          <li key={id} className={styles.told}>
            <span className={styles.named}>{words}</span>
            <Stand of={stands} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function MarkedFigure({ answer, view }: { answer: Placed; view: QuestionView }) {
  const { answer: shown, figure, units } = view;
  if (answer.form === 'point' && shown.form === 'point') {
    const told = answer.targets.filter(isTold);
    const on = { ...shown.on, names: true };
    const right = told.find(({ isRight }) => isRight);
    return <DrawingFigure on={on} over={<Stamps places={drawnPlaces(told, on)} standing={told} />} first={right} />;
  }
  if (answer.form === 'spot' && shown.form === 'spot') {
    const told = answer.shapes.filter(isTold);
    const over = (
      <div className={placed.onPhoto}>
        <Stamps places={shapeAreas(told)} standing={told} />
      </div>
    );
    return <PictureFigure on={shown.on} over={over} />;
  }
  if (answer.form !== 'stretch' || figure?.figure !== 'trace') return null;
  const told = answer.stretches.filter(isTold);
  const places = told.map((stretch) => {
    const area = stretchArea(stretch, figure, units);
    const badge = { sign: '', left: `calc(${area.left} + ${area.width} / 2)`, top: 'calc(100% - 22px)' };
    return { id: stretch.id, ring: area, hit: area, badge };
  });
  const on = { ...figure, stretches: answer.stretches };
  return <TraceFigure on={on} units={units} over={<Stamps places={places} standing={told} />} />;
}

/** A ring and a sign for each: solid with a tick for what is right, dashed with a cross for what is not. */
function Stamps({ places, standing }: { places: readonly Place[]; standing: readonly Standing[] }) {
  return (
    <div className={placed.over} aria-hidden="true">
      {places.map(({ id, ring, badge }, index) => {
        const right = standing[index]?.isRight ?? false;
        return (
          <span key={id}>
            <span className={`${placed.ring} ${right ? placed.right : placed.wrong}`} style={{ ...ring }} />
            {badge && (
              <span
                className={`${placed.badge} ${right ? placed.rightStamp : placed.wrongStamp}`}
                style={{ left: badge.left, top: badge.top }}
              >
                <StandingShape is={right ? 'right' : 'wrong'} />
              </span>
            )}
          </span>
        );
      })}
    </div>
  );
}

function itemsOf(answer: Placed): { id: string; words: React.ReactNode; stands: Standing }[] {
  switch (answer.form) {
    case 'point':
      return answer.targets.filter(isTold).map((one) => ({ id: one.id, words: one.name, stands: one }));
    case 'stretch':
      return answer.stretches
        .filter(isTold)
        .map((one) => ({ id: one.id, words: <StretchWords stretch={one} />, stands: one }));
    case 'spot':
      return answer.shapes
        .filter(isTold)
        .map((one) => ({ id: one.id, words: <InLine said={one.said} />, stands: one }));
  }
}

/** Chosen or right: of the rest there is nothing to say. */
function isTold({ chosen, isRight }: Standing): boolean {
  return chosen || isRight;
}
