import { useTranslations } from 'next-intl';
import type { AnswerView } from '@/app/_server/questions/question-view';
import type { Answer } from '@/lib/questions/answer';
import type { UnitChoice } from '../display-choices';
import styles from './question.module.css';
import { QuestionFigure } from './question-figure';
import { InLine } from './words';

/** One of several, or all that apply. */
export function OptionFields({
  answer: { form, options },
  given,
  units,
}: {
  answer: Extract<AnswerView, { form: 'choice' | 'several' }>;
  given: Answer | undefined;
  units: UnitChoice;
}) {
  const t = useTranslations('questions');
  const chosen = given?.form === 'choice' ? [given.option] : given?.form === 'several' ? given.options : [];
  const pictured = options.some(({ figure }) => figure !== undefined);
  return (
    <fieldset>
      <legend className={styles.legend}>{t(form === 'choice' ? 'chooseOne' : 'chooseAll')}</legend>
      <div className={pictured ? styles.pictured : styles.options}>
        {options.map(({ id, said, figure }, index) => (
          <div key={id} className={styles.option}>
            <label className={styles.choice}>
              <input
                type={form === 'choice' ? 'radio' : 'checkbox'}
                name={form === 'choice' ? 'option' : 'options'}
                value={id}
                defaultChecked={chosen.includes(id)}
                required={form === 'choice'}
              />
              <Numeral index={index} count={options.length} />
              <span>
                <InLine said={said} />
              </span>
            </label>
            {figure && <QuestionFigure figure={figure} units={units} />}
          </div>
        ))}
      </div>
    </fieldset>
  );
}

/** The key that chooses something, where there is one for each. */
export function Numeral({ index, count }: { index: number; count: number }) {
  if (count > 9) return null;
  return (
    <span className={styles.numeral} aria-hidden="true">
      {index + 1}
    </span>
  );
}
