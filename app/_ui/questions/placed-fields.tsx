import { useTranslations } from 'next-intl';
import type { FigureView, LetteredStretch } from '@/app/_server/questions/figure-view';
import type { AnswerView } from '@/app/_server/questions/question-view';
import type { UnitChoice } from '../display-choices';
import { showNumber } from '../show-quantity';
import { DrawingFigure } from './drawing-figure';
import { drawnPlaces, shapeAreas } from './figure-places';
import { Numeral } from './option-fields';
import placed from './placed.module.css';
import { PlacedGroup, PlacedList, PlacedRadios } from './placed-group';
import styles from './question.module.css';
import { PictureFigure } from './question-figure';
import { stretchArea, TraceFigure } from './trace-figure';
import { InLine } from './words';

type FormOf<F extends AnswerView['form']> = Extract<AnswerView, { form: F }>;

/** Longer lists are folded away: there is the drawing. */
const MOST_OPEN = 9;

/** One of several places on a drawing. */
export function PointFields({
  answer: { on, targets },
  given,
}: {
  answer: FormOf<'point'>;
  given: string | undefined;
}) {
  const t = useTranslations('questions');
  const over = <PlacedRadios name="target" label={t('pointAt')} places={drawnPlaces(targets, on)} given={given} />;
  return (
    <PlacedGroup given={given}>
      <p className={styles.legend}>{t('point')}</p>
      <DrawingFigure on={on} over={over} />
      <AsList items={targets} />
    </PlacedGroup>
  );
}

/** One area of a picture. */
export function SpotFields({ answer: { on, shapes }, given }: { answer: FormOf<'spot'>; given: string | undefined }) {
  const t = useTranslations('questions');
  const over = (
    <div className={placed.onPhoto}>
      <PlacedRadios name="shape" label={t('spotIn')} places={shapeAreas(shapes)} given={given} />
    </div>
  );
  return (
    <PlacedGroup given={given}>
      <p className={styles.legend}>{t('spot')}</p>
      <PictureFigure on={on} over={over} />
      <AsList items={shapes} />
    </PlacedGroup>
  );
}

function AsList({ items }: { items: FormOf<'point'>['targets'] | FormOf<'spot'>['shapes'] }) {
  const t = useTranslations('questions');
  return (
    <details className={placed.asList} open={items.length <= MOST_OPEN}>
      <summary>{t('asList')}</summary>
      <PlacedList
        items={items.map(({ id, said }, index) => ({
          id,
          sign: <Numeral index={index} count={items.length} />,
          words: <InLine said={said} />,
        }))}
      />
    </details>
  );
}

/** One stretch of the chart. */
export function StretchFields({
  answer: { stretches },
  figure,
  units,
  given,
}: {
  answer: FormOf<'stretch'>;
  figure: FigureView | undefined;
  units: UnitChoice;
  given: string | undefined;
}) {
  const t = useTranslations('questions');
  if (figure?.figure !== 'trace') throw new Error('A stretch is chosen on a trace');
  const places = stretches.map((stretch) => {
    const area = stretchArea(stretch, figure, units);
    return { id: stretch.id, ring: area, hit: area };
  });
  const over = (
    <div className={placed.onChart}>
      <PlacedRadios name="stretch" label={t('stretchOf')} places={places} given={given} />
    </div>
  );
  return (
    <PlacedGroup given={given}>
      <p className={styles.legend}>{t('stretch')}</p>
      <TraceFigure on={{ ...figure, stretches }} units={units} over={over} />
      <PlacedList
        items={stretches.map((stretch, index) => ({
          id: stretch.id,
          sign: <Numeral index={index} count={stretches.length} />,
          words: <StretchWords stretch={stretch} />,
        }))}
      />
    </PlacedGroup>
  );
}

/** A stretch by its letter and its times. */
export function StretchWords({ stretch: { letter, from, to } }: { stretch: LetteredStretch }) {
  const t = useTranslations('questions');
  return t('stretchWords', { letter, from: showNumber(from), to: showNumber(to) });
}
