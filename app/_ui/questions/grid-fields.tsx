import { useTranslations } from 'next-intl';
import { useId } from 'react';
import type { AnswerView } from '@/app/_server/questions/question-view';
import styles from './grid.module.css';
import question from './question.module.css';
import { InLine } from './words';

/** One column for each row: a table where there is room, row under row where there is not. */
export function GridFields({
  answer: { rows, columns },
  given,
}: {
  answer: Extract<AnswerView, { form: 'grid' }>;
  given: Readonly<Record<string, string>>;
}) {
  const t = useTranslations('questions');
  const group = useId();
  return (
    <fieldset>
      <legend className={question.legend}>{t('chooseEach')}</legend>
      <div className={styles.box}>
        <div className={styles.grid} style={{ '--columns': columns.length } as React.CSSProperties}>
          <div className={styles.head} aria-hidden="true">
            <span />
            {columns.map(({ id, said }) => (
              <span key={id}>
                <InLine said={said} />
              </span>
            ))}
          </div>
          {rows.map((row) => (
            <div key={row.id} role="radiogroup" aria-labelledby={`${group}-${row.id}`} className={styles.set}>
              <span id={`${group}-${row.id}`} className={styles.row}>
                <InLine said={row.said} />
              </span>
              <div className={styles.cells}>
                {columns.map(({ id, said }) => (
                  <label key={id} className={styles.cell}>
                    <input
                      type="radio"
                      name={`cell.${row.id}`}
                      value={id}
                      required
                      defaultChecked={given[row.id] === id}
                    />
                    <span>
                      <InLine said={said} />
                    </span>
                  </label>
                ))}
              </div>
            </div>
          ))}
        </div>
      </div>
    </fieldset>
  );
}
