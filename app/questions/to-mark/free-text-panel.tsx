import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { readDisplay } from '@/app/_server/display';
import { viewOf } from '@/app/_server/questions/question-view';
import { ActForm } from '@/app/_ui/act-form';
import { MarkdownText } from '@/app/_ui/questions/markdown-text';
import { QuestionFigure } from '@/app/_ui/questions/question-figure';
import { Paragraphs } from '@/app/_ui/questions/words';
import ui from '@/app/_ui/ui.module.css';
import { type FreeText, listManualMarks } from '@/db/queries/manual-marks';
import { findUser } from '@/db/queries/users';
import styles from '../questions.module.css';
import { markFreeText } from './actions';

/** Longest comment. */
const MOST_COMMENT = 2000;

interface Shown {
  text: FreeText;
  isNamed: boolean;
  /** Whoever marks may ask who answered. */
  mayName: boolean;
  /** Somebody else gave the first mark, and a second is to be given that does not know it. */
  isHidden: boolean;
}

/** An answer with what helps to mark it beside it. Who answered is hidden until somebody asks. */
export async function FreeTextPanel({ text, isNamed, mayName, isHidden }: Shown) {
  const { asked, answer } = text;
  const { units } = await readDisplay();
  const view = viewOf(asked, { content: undefined, catalogue: catalogue(), units });
  const t = await getTranslations('written.marking');
  return (
    <div className={styles.beside}>
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="answer">
        <h2>{t('asked')}</h2>
        <Paragraphs of={view.stem} />
        {view.figure && <QuestionFigure figure={view.figure} units={units} />}
        <h2 id="answer">{t('answer')}</h2>
        <p className={styles.answer}>{answer?.form === 'words' ? answer.text : ''}</p>
        <Whose text={text} isNamed={isNamed} mayName={mayName} />
        {isHidden ? <WaitsForSecond /> : <MarkForm text={text} isNamed={isNamed} />}
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

async function WaitsForSecond() {
  const t = await getTranslations('review');
  return (
    <p className={ui.notice}>
      {t('secondWaits')}{' '}
      <Link className={styles.way} href="/review/second-marks" prefetch={false}>
        {t('secondTitle')}
      </Link>
    </p>
  );
}

async function Whose({
  text: { sittingId, place, learnerId, demo },
  isNamed,
  mayName,
}: Pick<Shown, 'text' | 'isNamed' | 'mayName'>) {
  const t = await getTranslations('written.marking');
  const learner = isNamed ? await findUser(database(), learnerId) : undefined;
  const again = new URLSearchParams({ sitting: sittingId, place: String(place), ...(!isNamed && { names: 'yes' }) });
  return (
    <p className={ui.small}>
      {learner ? t('by', { name: learner.name }) : t('anonymous')}
      {demo && ` · ${t('demo')}`}
      {mayName && (
        <>
          {' · '}
          <Link className={styles.way} href={`/questions/to-mark?${again}`} prefetch={false}>
            {isNamed ? t('hideNames') : t('showNames')}
          </Link>
        </>
      )}
    </p>
  );
}

async function MarkForm({ text: { sittingId, place, asked }, isNamed }: { text: FreeText; isNamed: boolean }) {
  const marks = await listManualMarks(database(), { sittingId, place });
  const [last] = marks;
  const { steps } = asked;
  const t = await getTranslations('written.marking');
  const problems = await getTranslations('problems');
  return (
    <ActForm className={ui.stack} action={markFreeText} submit={t('save')} failed={problems('no-answer')}>
      <input type="hidden" name="sittingId" value={sittingId} />
      <input type="hidden" name="place" value={place} />
      <input type="hidden" name="seq" value={marks.length + 1} />
      {isNamed && <input type="hidden" name="names" value="yes" />}
      {last && <p className={ui.notice}>{t('again', { score: last.score, steps })}</p>}
      <fieldset>
        <legend className={ui.label}>{t('score')}</legend>
        <div className={styles.scores}>
          {Array.from({ length: steps + 1 }, (_, score) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a score is its place
            <label key={score}>
              <input type="radio" name="score" value={score} required defaultChecked={last?.score === score} />
              {score}
            </label>
          ))}
        </div>
      </fieldset>
      <label className={ui.field}>
        <span>{t('comment')}</span>
        <textarea name="comment" rows={3} maxLength={MOST_COMMENT} defaultValue={last?.comment} />
      </label>
    </ActForm>
  );
}
