import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import type { Session } from '@/app/_server/session';
import { ActForm } from '@/app/_ui/act-form';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import { listHolding } from '@/db/queries/members';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { askErasure } from './actions';
import styles from './me.module.css';

/** What is held on somebody, to take away or to have erased. */
export async function YourData({ session, settings }: { session: Session; settings: OrganizationSettings }) {
  const t = await getTranslations('account');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="data">
      <h2 id="data">{t('dataTitle')}</h2>
      <p className={ui.prose}>{t('exportBody')}</p>
      <p className={styles.downloads}>
        <a href="/me/export/json" download>
          {t('exportJson')}
        </a>
        <a href="/me/export/csv" download>
          {t('exportCsv')}
        </a>
      </p>
      <Erasure session={session} settings={settings} />
    </section>
  );
}

async function Erasure({ session, settings }: { session: Session; settings: OrganizationSettings }) {
  const holding = await listHolding(database(), session.actor.personId);
  const t = await getTranslations('account');
  const problems = await getTranslations('problems');
  if (holding.length === 0) return null;
  return (
    <>
      <h3>{t('erasureTitle')}</h3>
      <p className={ui.prose}>{t(holding.length > 1 ? 'erasureElsewhere' : 'erasureSignIn')}</p>
      {holding.map(({ organizationId, name, erasureAskedAt: asked }) => (
        <div key={organizationId} className={ui.stack}>
          <p className={ui.prose}>{t('erasureBody', { organization: name })}</p>
          {asked && <p className={ui.notice}>{t('erasureAsked', { date: shownDate(asked, settings) })}</p>}
          <ActForm
            action={askErasure}
            submit={t(asked ? 'takeErasureBack' : 'askErasure')}
            failed={problems('no-answer')}
            quiet
          >
            <input type="hidden" name="organizationId" value={organizationId} />
            <input type="hidden" name="wish" value={asked ? 'take-back' : 'ask'} />
          </ActForm>
        </div>
      ))}
    </>
  );
}
