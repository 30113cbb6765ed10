import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf, type SignedInPermit } from '@/app/_server/permit';
import { ActForm } from '@/app/_ui/act-form';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import { listApplicationsOf } from '@/db/queries/applications';
import { mayApply } from '@/lib/readiness/may-apply';
import type { Scheme } from '@/lib/readiness/scheme';
import { applyFor, withdrawApplication } from '../applications/actions';

/** One's own applications for a certificate, and whether another may be made now. */
export async function Applying({ scheme, permit }: { scheme: Scheme; permit: SignedInPermit }) {
  const t = await getTranslations('applying');
  const problems = await getTranslations('problems');
  const settings = await settingsFor(permit.session);
  const { personId: learnerId } = permit.session.actor;
  const organizationId = organizationOf(permit);
  const own = await listApplicationsOf(database(), { learnerId, organizationId, schemeId: scheme.id });
  const times = own.map(({ state, appliedAt, decidedAt }) => ({
    ...{ state, appliedAt: appliedAt.getTime(), decidedAt: decidedAt?.getTime() ?? null },
  }));
  const may = mayApply(scheme, times, Date.now());
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="applying">
      <h2 id="applying">{t('title')}</h2>
      <ul className={ui.stack}>
        {own.map(({ id, state, appliedAt, scheme: under, reason }) => (
          <li key={id} className={ui.stack}>
            <p>
              {t(`state.${state}`, { at: shownDate(appliedAt, settings), version: under.version })}
              {reason && ` ${t('reason', { reason })}`}
            </p>
            {state === 'open' && (
              <ActForm action={withdrawApplication} submit={t('withdraw')} failed={problems('no-answer')} quiet>
                <input type="hidden" name="applicationId" value={id} />
              </ActForm>
            )}
          </li>
        ))}
      </ul>
      {may.code === 'yes' && (
        <ActForm className={ui.stack} action={applyFor} submit={t('apply')} failed={problems('no-answer')}>
          <input type="hidden" name="schemeId" value={scheme.id} />
          <p>{t('applyRule', { version: scheme.version })}</p>
        </ActForm>
      )}
      {'from' in may && <p>{t(may.code, { from: shownDate(new Date(may.from), settings) })}</p>}
    </section>
  );
}
