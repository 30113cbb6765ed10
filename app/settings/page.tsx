import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFrom } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { ActForm } from '@/app/_ui/act-form';
import { shownTime } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { findOrganization } from '@/db/queries/organizations';
import { changeSettings } from './actions';
import { SettingsFields } from './settings-fields';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('settings');
  return { title: t('title') };
}

export default page('/settings', async (permit) => {
  const organization = await findOrganization(database(), organizationOf(permit));
  const settings = settingsFrom(organization?.settings);
  const t = await getTranslations('settings');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <section className={`${ui.panel} ${ui.stack}`} aria-label={t('title')}>
          <p className={ui.prose}>{t('body')}</p>
          <p className={ui.small}>{t('now', { now: shownTime(new Date(), settings) })}</p>
          <ActForm
            className={ui.stack}
            action={changeSettings}
            submit={t('store')}
            failed={problems('no-answer')}
            done={t('stored')}
          >
            <SettingsFields name={organization?.name ?? ''} settings={settings} />
          </ActForm>
        </section>
      </main>
    </>
  );
});
