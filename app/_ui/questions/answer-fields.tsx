import { useTranslations } from 'next-intl';
import type { FigureView } from '@/app/_server/questions/figure-view';
import { plainText } from '@/app/_server/questions/plain-text';
import type { AnswerView, QuestionView } from '@/app/_server/questions/question-view';
import type { Answer } from '@/lib/questions/answer';
import { GridFields } from './grid-fields';
import { NumberFields } from './number-fields';
import { OptionFields } from './option-fields';
import { OrderFields } from './order-fields';
import { PointFields, SpotFields, StretchFields } from './placed-fields';
import styles from './question.module.css';
import { InLine } from './words';
import { WordsField } from './words-field';

/** Whether a question is answered on its figure itself, which then need not be shown a second time. */
export function isPlaced(answer: AnswerView, figure: FigureView): boolean {
  if (answer.form === 'stretch') return figure.figure === 'trace';
  return answer.form === 'point' && figure.figure === 'drawing' && figure.rig.id === answer.on.rig.id;
}

/** The fields of an answer, as its form posts them. */
export function AnswerFields({
  view: { answer, figure, units },
  given,
}: {
  view: QuestionView;
  given: Answer | undefined;
}) {
  switch (answer.form) {
    case 'choice':
    case 'several':
      return <OptionFields answer={answer} given={given} units={units} />;
    case 'order':
      return <Order answer={answer} given={given} />;
    case 'numbers':
      return <NumberFields parts={answer.parts} given={given?.form === 'numbers' ? given.parts : {}} />;
    case 'point':
      return <PointFields answer={answer} given={given?.form === 'point' ? given.target : undefined} />;
    case 'grid':
      return <GridFields answer={answer} given={given?.form === 'grid' ? given.cells : {}} />;
    case 'stretch': {
      const chosen = given?.form === 'stretch' ? given.stretch : undefined;
      return <StretchFields answer={answer} figure={figure} units={units} given={chosen} />;
    }
    case 'spot':
      return <SpotFields answer={answer} given={given?.form === 'spot' ? given.shape : undefined} />;
    case 'words':
      return <Words most={answer.most} given={given?.form === 'words' ? given.text : ''} />;
  }
}

function Order({
  answer: { items },
  given,
}: {
  answer: Extract<AnswerView, { form: 'order' }>;
  given: Answer | undefined;
}) {
  const t = useTranslations('questions.order');
  const ids = given?.form === 'order' ? given.order : items.map(({ id }) => id);
  const inOrder = ids.flatMap((id) => items.find((item) => item.id === id) ?? []);
  return (
    <fieldset>
      <legend className={styles.legend}>{t('legend')}</legend>
      <OrderFields
        items={inOrder.map(({ id, said }) => ({ id, name: plainText(said), words: <InLine said={said} /> }))}
        words={{
          label: t('label'),
          hint: t('hint'),
          drag: t('drag'),
          up: t('up'),
          down: t('down'),
          lifted: t('lifted'),
          dropped: t('dropped'),
          cancelled: t('cancelled'),
          places: items.map((_, index) => t('place', { place: index + 1, count: items.length })),
        }}
      />
    </fieldset>
  );
}

function Words({ most, given }: { most: number; given: string }) {
  const t = useTranslations('questions.words');
  return <WordsField label={t('label')} room={t('room', { most })} tooLong={t('tooLong')} most={most} given={given} />;
}
