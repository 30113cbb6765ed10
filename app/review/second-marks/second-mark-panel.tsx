import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { readDisplay } from '@/app/_server/display';
import { viewOf } from '@/app/_server/questions/question-view';
import { ActForm } from '@/app/_ui/act-form';
import { MarkdownText } from '@/app/_ui/questions/markdown-text';
import { QuestionFigure } from '@/app/_ui/questions/question-figure';
import { Paragraphs } from '@/app/_ui/questions/words';
import ui from '@/app/_ui/ui.module.css';
import type { AwaitedText } from '@/db/queries/second-marks';
import { MOST_WORDS } from '../comments';
import styles from '../review.module.css';
import { giveSecondMark } from './actions';

/** An answer with what helps to mark it: neither who answered nor what the first marker gave. */
export async function SecondMarkPanel({ text }: { text: AwaitedText }) {
  const { asked, answer } = text;
  const { units } = await readDisplay();
  const view = viewOf(asked, { content: undefined, catalogue: catalogue(), units });
  const t = await getTranslations('written.marking');
  return (
    <div className={styles.pairOfPanels}>
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="answer">
        <h2>{t('asked')}</h2>
        <Paragraphs of={view.stem} />
        {view.figure && <QuestionFigure figure={view.figure} units={units} />}
        <h2 id="answer">{t('answer')}</h2>
        <p className={styles.words}>{answer?.form === 'words' ? answer.text : ''}</p>
        <MarkForm text={text} />
      </section>
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="model">
        <h2 id="model">{t('model')}</h2>
        {asked.key.form === 'words' && <MarkdownText markdown={asked.key.model} level={3} />}
        <h2>{t('guidance')}</h2>
        {asked.key.form === 'words' && asked.key.guidance !== '' ? (
          <MarkdownText markdown={asked.key.guidance} level={3} />
        ) : (
          <p>{t('noGuidance')}</p>
        )}
      </section>
    </div>
  );
}

async function MarkForm({ text: { sittingId, place, asked } }: { text: AwaitedText }) {
  const t = await getTranslations('written.marking');
  const problems = await getTranslations('problems');
  return (
    <ActForm className={ui.stack} action={giveSecondMark} submit={t('save')} failed={problems('no-answer')}>
      <input type="hidden" name="sittingId" value={sittingId} />
      <input type="hidden" name="place" value={place} />
      <fieldset>
        <legend className={ui.label}>{t('score')}</legend>
        <div className={styles.scores}>
          {Array.from({ length: asked.steps + 1 }, (_, score) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a score is its place
            <label key={score}>
              <input type="radio" name="score" value={score} required />
              {score}
            </label>
          ))}
        </div>
      </fieldset>
      <label className={ui.field}>
        <span>{t('comment')}</span>
        <textarea name="comment" rows={3} maxLength={MOST_WORDS} />
      </label>
    </ActForm>
  );
}
