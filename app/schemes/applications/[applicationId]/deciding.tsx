import { getTranslations } from 'next-intl/server';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import assignments from '@/app/assignments/assignments.module.css';
import type { Standing } from '@/lib/readiness/intake-outcome';
import { type Conflict, possibleVerdict } from '@/lib/readiness/may-decide';
import { decideApplication } from '../actions';

/** The decision, for who had no part in the training; none where the evidence says too little. */
export async function Deciding({
  applicationId,
  standing,
  conflicts,
}: {
  applicationId: string;
  standing: Standing | undefined;
  conflicts: readonly Conflict[];
}) {
  const t = await getTranslations('applications');
  const problems = await getTranslations('problems');
  const verdict = standing && possibleVerdict(standing.decision);
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="deciding">
      <h2 id="deciding">{t('deciding')}</h2>
      {conflicts.length > 0 ? (
        <ul>
          {conflicts.map((conflict) => (
            <li key={conflict}>{t(`conflict.${conflict}`)}</li>
          ))}
        </ul>
      ) : !verdict ? (
        <p>{t('staysOpen')}</p>
      ) : (
        <ActForm className={ui.stack} action={decideApplication} submit={t(verdict)} failed={problems('no-answer')}>
          <input type="hidden" name="applicationId" value={applicationId} />
          <input type="hidden" name="verdict" value={verdict} />
          <label className={ui.field}>
            <span>{t('reason')}</span>
            <textarea name="reason" rows={3} required maxLength={1000} />
          </label>
          {(['safe', 'impartial'] as const).map((name) => (
            <label key={name} className={assignments.tick}>
              <input type="checkbox" name={name} required />
              <span>{t(`confirm.${name}`)}</span>
            </label>
          ))}
        </ActForm>
      )}
    </section>
  );
}
