import { useTranslations } from 'next-intl';
import type { MarkedView, Outcome } from '@/app/_server/questions/marked-view';
import { KeyInWords } from './key-in-words';
import styles from './marked.module.css';
import { MarkedAnswer, MarkedOthers } from './marked-answer';
import { isMarkedOnFigure } from './marked-places';
import question from './question.module.css';
import { CautionsBeside } from './question-fields';
import { QuestionFigure } from './question-figure';
import { StandingShape } from './standing-mark';
import { Paragraphs } from './words';

/**
 * A question after its mark: first how it stands, then what was asked with answer and key, what there is to say of it, and
 * how the key comes about.
 *
 * @param comment  What a person said who marked it.
 */
export function MarkedQuestion({ marked, comment }: { marked: MarkedView; comment?: string | undefined }) {
  const t = useTranslations('questions.marked');
  const { view, outcome, answer, notes, explanation } = marked;
  const { stem, figure, cautions, units } = view;
  return (
    <div className={`${question.question} ${styles.marked}`}>
      <div className={styles.outcome}>
        <OutcomeSentence outcome={outcome} />
        {outcome.is !== 'right' && <KeyInWords answer={answer} />}
      </div>
      <Paragraphs of={stem} level={2} />
      <CautionsBeside ids={cautions} />
      {figure && !isMarkedOnFigure(view) && <QuestionFigure figure={figure} units={units} told />}
      <MarkedAnswer answer={answer} view={view} />
      {comment !== undefined && comment !== '' && (
        <section>
          <h2>{t('comment')}</h2>
          <p className={styles.comment}>{comment}</p>
        </section>
      )}
      {notes.length > 0 && (
        <section>
          <h2>{t(answer.form === 'numbers' ? 'slips' : 'notes')}</h2>
          <Paragraphs of={notes} />
        </section>
      )}
      <MarkedOthers answer={answer} />
      <section className={styles.explanation}>
        <h2>{t('explanation')}</h2>
        <Paragraphs of={explanation} />
      </section>
    </div>
  );
}

/** How an answer stands, in one sentence. */
export function OutcomeSentence({ outcome }: { outcome: Outcome }) {
  const t = useTranslations('questions.marked');
  return (
    <p className={styles.sentence}>
      <StandingShape is={outcome.is} />
      {outcome.is === 'partly' ? t('partly', { score: outcome.score, steps: outcome.steps }) : t(outcome.is)}
    </p>
  );
}
