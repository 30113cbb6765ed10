import { useTranslations } from 'next-intl';
import type { QuestionView } from '@/app/_server/questions/question-view';
import { Cautions } from '@/app/_ui/cautions';
import type { Answer } from '@/lib/questions/answer';
import { AnswerFields, isPlaced } from './answer-fields';
import { AnswerKeys, type KeyWords } from './answer-keys';
import styles from './question.module.css';
import { QuestionFigure } from './question-figure';
import { Paragraphs } from './words';

/**
 * What is asked and the fields to answer it, to stand in a form. Rendered on the server; a form for another question needs
 * another `key`, or what was chosen for this one stays.
 *
 * @param given  An answer already given, to be shown and changed.
 * @param keys   Whether number keys choose: for one question on a page.
 */
export function QuestionFields({
  view,
  given,
  keys = true,
}: {
  view: QuestionView;
  given?: Answer | undefined;
  keys?: boolean;
}) {
  const { stem, figure, cautions, answer, units } = view;
  const beside = figure?.figure === 'instrument' && figure.gauge.display !== 'trace';
  return (
    <div className={styles.question}>
      <Paragraphs of={stem} level={2} lead />
      <CautionsBeside ids={cautions} />
      <div className={beside ? styles.beside : styles.below}>
        {figure && !isPlaced(answer, figure) && <QuestionFigure figure={figure} units={units} />}
        <div className={styles.answer}>
          <AnswerFields view={view} given={given} />
        </div>
      </div>
      {keys && <Keys answer={answer} />}
    </div>
  );
}

export function CautionsBeside({ ids }: { ids: readonly string[] }) {
  const t = useTranslations('questions');
  return <Cautions title={t('cautions')} ids={ids} />;
}

/** More than there are keys for. */
const MOST_KEYS = 9;

/** What the keyboard does, where it does more than go from field to field. */
function Keys({ answer }: { answer: QuestionView['answer'] }) {
  const t = useTranslations('questions.keys');
  const chosen = choicesOf(answer);
  if (answer.form === 'words' || answer.form === 'order') return null;
  const words: KeyWords = { enter: t('enter'), turnOff: t('turnOff'), turnOn: t('turnOn'), off: t('off') };
  const along = answer.form === 'point' && { move: t('arrows') };
  if (!chosen || chosen.count > MOST_KEYS) return <AnswerKeys words={{ ...words, ...along }} />;
  return (
    <AnswerKeys field={chosen.field} words={{ ...words, ...along, choose: t('choose', { count: chosen.count }) }} />
  );
}

function choicesOf(answer: QuestionView['answer']): { field: string; count: number } | undefined {
  switch (answer.form) {
    case 'choice':
      return { field: 'option', count: answer.options.length };
    case 'several':
      return { field: 'options', count: answer.options.length };
    case 'point':
      return { field: 'target', count: answer.targets.length };
    case 'stretch':
      return { field: 'stretch', count: answer.stretches.length };
    case 'spot':
      return { field: 'shape', count: answer.shapes.length };
    default:
      return undefined;
  }
}
