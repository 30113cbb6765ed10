import { useTranslations } from 'next-intl';
import type { MarkedAnswer as Marked, Standing } from '@/app/_server/questions/marked-view';
import type { OptionView, QuestionView } from '@/app/_server/questions/question-view';
import type { Said } from '@/app/_server/questions/say';
import type { UnitChoice } from '../display-choices';
import styles from './marked.module.css';
import { MarkedNumbers } from './marked-numbers';
import { MarkedPlaces } from './marked-places';
import { QuestionFigure } from './question-figure';
import { StandingMark } from './standing-mark';
import { InLine, Paragraphs } from './words';

/** What was answered beside its key, each told by shape and word. */
export function MarkedAnswer({ answer, view }: { answer: Marked; view: QuestionView }) {
  switch (answer.form) {
    case 'choice':
    case 'several':
      return <MarkedOptions answer={answer} units={view.units} />;
    case 'order':
      return <MarkedOrder answer={answer} />;
    case 'numbers':
      return <MarkedNumbers parts={answer.parts} />;
    case 'grid':
      return <MarkedGrid rows={answer.rows} />;
    case 'words':
      return <MarkedWords answer={answer} />;
    default:
      return <MarkedPlaces answer={answer} view={view} />;
  }
}

type FormOf<F extends Marked['form']> = Extract<Marked, { form: F }>;

/** How something that could be chosen stands, where there is anything to say of it. */
export function Stand({ of: { chosen, isRight } }: { of: Standing }) {
  const t = useTranslations('questions.marked');
  if (chosen)
    return <StandingMark is={isRight ? 'right' : 'wrong'}>{t(isRight ? 'yoursRight' : 'yoursWrong')}</StandingMark>;
  return isRight ? <StandingMark is="right">{t('key')}</StandingMark> : null;
}

function MarkedOptions({
  answer: { form, options },
  units,
}: {
  answer: FormOf<'choice' | 'several'>;
  units: UnitChoice;
}) {
  const t = useTranslations('questions.marked');
  return (
    <div className={styles.part}>
      <ul className={styles.rows}>
        {options.map((option) => (
          <li key={option.id} className={option.chosen || option.isRight ? styles.told : undefined}>
            <span>
              <InLine said={option.said} />
            </span>
            <Stand of={option} />
            {option.figure && <QuestionFigure figure={option.figure} units={units} />}
          </li>
        ))}
      </ul>
      {form === 'several' && options.some(({ chosen, isRight }) => chosen && !isRight) && <p>{t('costs')}</p>}
    </div>
  );
}

/** What speaks against those that were not chosen, for whoever wants to know. */
export function MarkedOthers({ answer }: { answer: Marked }) {
  const t = useTranslations('questions.marked');
  if (answer.form !== 'choice' && answer.form !== 'several') return null;
  const others = answer.options.filter(({ chosen, isRight, because }) => !chosen && !isRight && because);
  if (others.length === 0) return null;
  return (
    <details className={styles.others}>
      <summary>{t('others')}</summary>
      <dl>
        {others.map(({ id, said, because }) => (
          <div key={id}>
            <dt>
              <InLine said={said} />
            </dt>
            <dd>{because && <InLine said={because} />}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

function MarkedOrder({ answer: { given, right } }: { answer: FormOf<'order'> }) {
  const t = useTranslations('questions.marked');
  return (
    <div className={styles.orders}>
      {given.length > 0 && (
        <section>
          <h2>{t('yourOrder')}</h2>
          <Places items={given}>
            {(place, index) => (
              <StandingMark is={place === index + 1 ? 'right' : 'wrong'}>
                {place === index + 1 ? t('inPlace') : t('belongs', { place })}
              </StandingMark>
            )}
          </Places>
        </section>
      )}
      <section>
        <h2>{t('rightOrder')}</h2>
        <Places items={right} />
      </section>
    </div>
  );
}

function Places({
  items,
  children,
}: {
  items: readonly (OptionView & { place?: number })[];
  children?: (place: number, index: number) => React.ReactNode;
}) {
  return (
    <ol className={styles.rows}>
      {items.map(({ id, said, place }, index) => (
        <li key={id} className={styles.placed}>
          <span className={styles.place}>{index + 1}</span>
          <span>
            <InLine said={said} />
          </span>
          {place !== undefined && children?.(place, index)}
        </li>
      ))}
    </ol>
  );
}

function MarkedGrid({ rows }: { rows: FormOf<'grid'>['rows'] }) {
  const t = useTranslations('questions.marked');
  const words = (said: Said | undefined) => (said ? <InLine said={said} /> : t('none'));
  return (
    <ul className={styles.rows}>
      {rows.map(({ id, said, given, right, isRight }) => (
        <li key={id} className={styles.told}>
          <span>
            <b>
              <InLine said={said} />
            </b>
            {': '}
            {words(right)}
          </span>
          <StandingMark is={isRight ? 'right' : 'wrong'}>
            {isRight ? t('yoursRight') : <span>{t.rich('yoursWas', { answer: () => words(given) })}</span>}
          </StandingMark>
        </li>
      ))}
    </ul>
  );
}

function MarkedWords({ answer: { text, model } }: { answer: FormOf<'words'> }) {
  const t = useTranslations('questions.marked');
  return (
    <div className={styles.orders}>
      <section>
        <h2>{t('yours')}</h2>
        <p className={styles.text}>{text === '' ? t('none') : text}</p>
      </section>
      <section>
        <h2>{t('modelAnswer')}</h2>
        <Paragraphs of={[model]} />
      </section>
    </div>
  );
}
