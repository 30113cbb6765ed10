import { getTranslations } from 'next-intl/server';
import { previewChange } from '@/app/_server/gradebook/preview-change';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import type { assignments } from '@/db/schema';
import type { Change } from '@/lib/regrading/change';
import { changeMarks } from './actions';
import { ChangeInWords } from './change-in-words';
import styles from './marks.module.css';

/** Who would move and how, and the button that does it. */
export async function Preview({ assignment, change }: { assignment: typeof assignments.$inferSelect; change: Change }) {
  const t = await getTranslations('marks');
  const problems = await getTranslations('problems');
  const moves = await previewChange(assignment, change);
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="preview">
      <h2 id="preview">{t('previewTitle')}</h2>
      <p className={ui.lead}>
        <ChangeInWords change={change} />
      </p>
      {moves ? (
        <>
          <p>
            {t('moves', {
              moved: moves.moved.length,
              unmoved: moves.unmoved,
              before: moves.meanBefore.toFixed(1),
              after: moves.meanAfter.toFixed(1),
            })}
          </p>
          {moves.moved.length > 0 && (
            <table className={styles.moves}>
              <thead>
                <tr>
                  <th scope="col">{t('colPerson')}</th>
                  <th scope="col">{t('colBefore')}</th>
                  <th scope="col">{t('colAfter')}</th>
                  <th scope="col">{t('colBy')}</th>
                </tr>
              </thead>
              <tbody>
                {moves.moved.map(({ turnId, name, before, after }) => (
                  <tr key={turnId}>
                    <th scope="row">{name}</th>
                    <td>{before.toFixed(1)}</td>
                    <td>{after.toFixed(1)}</td>
                    <td>{`${after > before ? '+' : '−'}${Math.abs(after - before).toFixed(1)}`}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
        </>
      ) : (
        <p>{t('nobody')}</p>
      )}
      <ActForm className={ui.stack} action={changeMarks} submit={t('commit')} failed={problems('no-answer')}>
        <input type="hidden" name="assignmentId" value={assignment.id} />
        <input type="hidden" name="change" value={JSON.stringify(change)} />
        <label className={ui.field}>
          <span>{t('reason')}</span>
          <textarea name="reason" rows={3} maxLength={1000} required />
        </label>
      </ActForm>
    </section>
  );
}
