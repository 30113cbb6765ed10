import { getTranslations } from 'next-intl/server';
import type { ReadStatistics } from '@/app/_server/gradebook/read-statistics';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import { acceptDifficulties } from './actions';
import styles from './statistics.module.css';

/** Difficulties refitted from answers beside the designed ones: a proposal, which somebody accepts or leaves. */
export async function Proposals({ read, mayAccept }: { read: ReadStatistics; mayAccept: boolean }) {
  const t = await getTranslations('statistics');
  const problems = await getTranslations('problems');
  const { refitted, assignment, closed } = read;
  const logits = (value: number) => value.toFixed(2).replace('-', '−');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="refit">
      <h2 id="refit">{t('refitTitle')}</h2>
      <p>{t('refitBody')}</p>
      {refitted.why !== undefined ? (
        <p>{t('refitNone')}</p>
      ) : (
        <>
          <div className={styles.scroll}>
            <table className={styles.proposals}>
              <thead>
                <tr>
                  <th scope="col">{t('colTask')}</th>
                  <th scope="col">{t('colDesign')}</th>
                  <th scope="col">{t('colRefitted')}</th>
                  <th scope="col">{t('colPeople')}</th>
                  <th scope="col">{t('colSays')}</th>
                </tr>
              </thead>
              <tbody>
                {refitted.proposals.map((proposal, index) => (
                  <tr key={read.items[index]?.place}>
                    <th scope="row">{read.items[index]?.place}</th>
                    <td>{logits(proposal.design)}</td>
                    <td>
                      {proposal.why === undefined
                        ? `${logits(proposal.refitted)} ± ${proposal.standardError.toFixed(2)}`
                        : '–'}
                    </td>
                    <td>{proposal.people}</td>
                    <td>
                      {proposal.why === undefined ? t(proposal.moved ? 'moved' : 'asDesigned') : t('tooFewAnswers')}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          {!closed && <p className={ui.notice}>{t('notBetween')}</p>}
          {closed && mayAccept && (
            <ActForm
              action={acceptDifficulties}
              submit={t('accept')}
              failed={problems('no-answer')}
              done={t('accepted')}
            >
              <input type="hidden" name="assignmentId" value={assignment.id} />
            </ActForm>
          )}
          {read.acceptedAt && <p className={ui.small}>{t('acceptedAt', { at: read.acceptedAt })}</p>}
        </>
      )}
    </section>
  );
}
