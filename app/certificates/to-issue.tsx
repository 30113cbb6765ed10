import { getTranslations } from 'next-intl/server';
import { isPartial } from '@/app/_server/certificates/change-status';
import { database } from '@/app/_server/database';
import { readSettings } from '@/app/_server/organization-settings';
import { organizationOf, type SignedInPermit } from '@/app/_server/permit';
import { ActForm } from '@/app/_ui/act-form';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import { listToIssue } from '@/db/queries/certificates';
import { issueCertificate } from './actions';
import styles from './certificates.module.css';

/** As many as are looked at in one go. */
const LISTED = 50;

/** Applications that were granted: a certificate is made out by somebody who had no part in the training. */
export async function ToIssue({ permit }: { permit: SignedInPermit }) {
  const organizationId = organizationOf(permit);
  const waiting = await listToIssue(database(), organizationId, LISTED);
  const settings = await readSettings(organizationId);
  const t = await getTranslations('certificates');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="to-issue">
      <h2 id="to-issue">{t('toIssueTitle')}</h2>
      {waiting.length === 0 && <p>{t('noneToIssue')}</p>}
      <ul className={styles.keys}>
        {waiting.map(async ({ id, learnerId, holder, scheme, decidedAt }) => (
          <li key={id} className={ui.stack}>
            <p>
              <strong>{holder}</strong> · {scheme.text.en.name}
              {decidedAt && <span className={ui.small}> {t('grantedAt', { at: shownDate(decidedAt, settings) })}</span>}
            </p>
            {(await isPartial(organizationId, permit.session.actor.personId, learnerId)) ? (
              <p className={ui.notice}>{t('partial')}</p>
            ) : (
              <ActForm
                className={ui.stack}
                action={issueCertificate}
                submit={t('issue')}
                failed={problems('no-answer')}
              >
                <input type="hidden" name="applicationId" value={id} />
                <label className={ui.field}>
                  <span>{t('comment')}</span>
                  <textarea name="comment" rows={2} required maxLength={1000} />
                </label>
                <p className={ui.small}>{t('commentRule')}</p>
              </ActForm>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
