import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { issuerAddress } from '@/app/_server/certificates/addresses';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { readSettings } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import { shownTime } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listIssuerKeys, type PublicKeyRow } from '@/db/queries/issuer-keys';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import styles from '../certificates.module.css';
import { compromiseKey, makeIssuerKey } from './actions';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('issuerKeys');
  return { title: t('title') };
}

/** What the organisation signs its certificates with. */
export default page('/certificates/keys', async (permit) => {
  const organizationId = organizationOf(permit);
  const keys = (await listIssuerKeys(database(), organizationId)).toReversed();
  const settings = await readSettings(organizationId);
  const t = await getTranslations('issuerKeys');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('body')}</p>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="make">
          <h2 id="make">{t('makeTitle')}</h2>
          <p className={ui.prose}>{t('makeBody')}</p>
          <ActForm action={makeIssuerKey} submit={t('make')} failed={problems('no-answer')} done={t('made')}>
            {null}
          </ActForm>
        </section>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="keys">
          <h2 id="keys">{t('listTitle')}</h2>
          {keys.length === 0 && <p>{t('none')}</p>}
          <ul className={styles.keys}>
            {keys.map((key) => (
              <Key key={key.kid} row={key} settings={settings} />
            ))}
          </ul>
          {keys.length > 0 && (
            <p className={ui.small}>
              {t('published')} <a href={`${issuerAddress(organizationId)}/keys`}>{t('set')}</a>
            </p>
          )}
        </section>
      </main>
    </>
  );
});

async function Key({ row, settings }: { row: PublicKeyRow; settings: OrganizationSettings }) {
  const t = await getTranslations('issuerKeys');
  const problems = await getTranslations('problems');
  const { kid, createdAt, retiredAt, compromisedAt } = row;
  return (
    <li className={ui.stack}>
      <p>
        <span className={`${ui.code} ${styles.long}`}>{kid}</span>
        <br />
        <strong>{t(compromisedAt ? 'compromised' : retiredAt ? 'retired' : 'inUse')}</strong>
        <span className={ui.small}>
          {' '}
          {t('madeAt', { at: shownTime(createdAt, settings) })}
          {retiredAt && ` · ${t('retiredAt', { at: shownTime(retiredAt, settings) })}`}
          {compromisedAt && ` · ${t('compromisedAt', { at: shownTime(compromisedAt, settings) })}`}
        </span>
      </p>
      {!compromisedAt && (
        <details>
          <summary>{t('compromise')}</summary>
          <ActForm className={ui.stack} action={compromiseKey} submit={t('mark')} failed={problems('no-answer')} quiet>
            <input type="hidden" name="kid" value={kid} />
            <p className={ui.prose}>{t('compromiseBody')}</p>
            <Field label={t('from')} rule={t('fromRule')} name="from" type="datetime-local" />
          </ActForm>
        </details>
      )}
    </li>
  );
}
