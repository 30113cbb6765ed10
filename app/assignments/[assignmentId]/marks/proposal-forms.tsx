import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { plainText } from '@/app/_server/questions/plain-text';
import ui from '@/app/_ui/ui.module.css';
import { findAskedAt } from '@/db/queries/regrades';
import type { assignments } from '@/db/schema';
import { parts } from '@/lib/grading/grade';
import { STANDARD_RUBRIC } from '@/lib/grading/rubric';
import type { Line } from '@/lib/questions/line';
import type { SetBody } from '@/lib/sets/set-body';
import { isCase, tasksOf } from '@/lib/sets/tasks';
import styles from './marks.module.css';

type Query = Readonly<Record<string, string | string[] | undefined>>;

/** What may be changed, each to be looked at before it is done. */
export async function ProposalForms({
  assignment,
  body,
  query,
}: {
  assignment: typeof assignments.$inferSelect;
  body: SetBody;
  query: Query;
}) {
  const t = await getTranslations('marks');
  const tasks = tasksOf(body);
  const questions = tasks.filter((task) => !isCase(task));
  return (
    <>
      {tasks.some(isCase) && <WeightsForm assignment={assignment} query={query} />}
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="withdraw">
        <h2 id="withdraw">{t('withdrawTitle')}</h2>
        <p className={ui.small}>{t('withdrawBody')}</p>
        <form className={styles.row}>
          <input type="hidden" name="kind" value="withdraw" />
          <label className={ui.field}>
            <span>{t('task')}</span>
            <select name="place" defaultValue={query.place}>
              {tasks.map((task) => (
                <option key={task.place} value={task.place}>
                  {t(isCase(task) ? 'caseAt' : 'questionAt', { place: task.place })}
                </option>
              ))}
            </select>
          </label>
          <button type="submit">{t('look')}</button>
        </form>
      </section>
      {questions.length > 0 && (
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="key">
          <h2 id="key">{t('keyTitle')}</h2>
          <p className={ui.small}>{t(assignment.rules.seeds === 'same' ? 'keyBody' : 'keyParallel')}</p>
          {assignment.rules.seeds === 'same' && (
            <>
              <form className={styles.row}>
                <input type="hidden" name="kind" value="choose" />
                <label className={ui.field}>
                  <span>{t('task')}</span>
                  <select name="place" defaultValue={query.place}>
                    {questions.map(({ place }) => (
                      <option key={place} value={place}>
                        {t('questionAt', { place })}
                      </option>
                    ))}
                  </select>
                </label>
                <button type="submit">{t('options')}</button>
              </form>
              <Options assignmentId={assignment.id} query={query} />
            </>
          )}
        </section>
      )}
    </>
  );
}

async function WeightsForm({ assignment, query }: { assignment: typeof assignments.$inferSelect; query: Query }) {
  const t = await getTranslations('marks');
  const names = await getTranslations('debrief.parts');
  const usual = assignment.rules.weights ?? catalogue().rubrics.get(STANDARD_RUBRIC)?.parts;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="weights">
      <h2 id="weights">{t('weightsTitle')}</h2>
      <p className={ui.small}>{t('weightsBody')}</p>
      <form className={styles.row}>
        <input type="hidden" name="kind" value="weights" />
        {parts.map((part) => (
          <label key={part} className={ui.field}>
            <span>{names(part)}</span>
            <input
              name={part}
              type="number"
              min={0}
              max={100}
              step="any"
              required
              defaultValue={query.kind === 'weights' ? query[part] : usual?.[part]}
            />
          </label>
        ))}
        <button type="submit">{t('look')}</button>
      </form>
    </section>
  );
}

/** The options of the question that was chosen, of which some may be right too. */
async function Options({ assignmentId, query }: { assignmentId: string; query: Query }) {
  const t = await getTranslations('marks');
  const place = Number(query.place);
  if (!['choose', 'key'].includes(String(query.kind)) || !Number.isInteger(place)) return null;
  const asked = await findAskedAt(database(), { assignmentId, place });
  const form = asked?.answer;
  if (form?.form !== 'choice' || asked?.key.form !== 'choice') return <p className={ui.notice}>{t('noOptions')}</p>;
  const { right } = asked.key;
  const given = [query.right].flat();
  return (
    <form className={ui.stack}>
      <input type="hidden" name="kind" value="key" />
      <input type="hidden" name="place" value={place} />
      <p>{asked.stem.map(words).join(' ')}</p>
      <fieldset className={ui.stack}>
        <legend>{t('rightToo')}</legend>
        {form.options.map(({ id, line }) => (
          <label key={id} className={styles.option}>
            <input
              type="checkbox"
              name="right"
              value={id}
              disabled={right.includes(id)}
              defaultChecked={right.includes(id) || given.includes(id)}
            />
            <span>
              {words(line)}
              {right.includes(id) && <span className={ui.small}> {t('rightAlready')}</span>}
            </span>
          </label>
        ))}
      </fieldset>
      <button type="submit" className={styles.button}>
        {t('look')}
      </button>
    </form>
  );
}

/** What was marked keeps its words as they were said. */
function words(line: Line): string {
  return 'say' in line ? '' : plainText(line);
}
