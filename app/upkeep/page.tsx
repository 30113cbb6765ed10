import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { env } from '@/app/_server/env';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { listBackUps } from '@/app/_server/upkeep/back-ups';
import { ActForm } from '@/app/_ui/act-form';
import styles from '@/app/_ui/lines.module.css';
import { shownTime } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listOrganizations } from '@/db/queries/organizations';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { addOrganization, backUpNow } from './actions';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('upkeep');
  return { title: t('title') };
}

/** For whoever looks after the installation: back-ups, how to restore one, and the organisations that share it. */
export default page('/upkeep', async ({ session }) => {
  const t = await getTranslations('upkeep');
  const settings = await settingsFor(session);
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <BackUps settings={settings} />
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="restore">
          <h2 id="restore">{t('restoreTitle')}</h2>
          <ol className={ui.steps}>
            {([1, 2, 3, 4, 5] as const).map((step) => (
              <li key={step}>{t(`restore${step}`, { folder: env.FAULTWRIGHT_DATA })}</li>
            ))}
          </ol>
          <p className={ui.small}>{t('restoreSecret')}</p>
        </section>
        <Organizations settings={settings} />
      </main>
    </>
  );
});

async function BackUps({ settings }: { settings: OrganizationSettings }) {
  const backUps = await listBackUps();
  const t = await getTranslations('upkeep');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="back-ups">
      <h2 id="back-ups">{t('backUpsTitle')}</h2>
      <p className={ui.prose}>{t('backUpsBody')}</p>
      <ActForm action={backUpNow} submit={t('backUpNow')} failed={problems('no-answer')} done={t('backedUp')}>
        {null}
      </ActForm>
      {backUps.length === 0 && <p>{t('noBackUps')}</p>}
      <ul className={styles.lines}>
        {backUps.map(({ file, madeAt, bytes }) => (
          <li key={file}>
            <span>{shownTime(madeAt, settings)}</span>
            <span className={ui.small}>{t('size', { megabytes: bytes / 1e6 })}</span>
            <a className={styles.way} href={`/upkeep/back-ups/${file}`} download>
              {t('download', { when: shownTime(madeAt, settings) })}
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}

async function Organizations({ settings }: { settings: OrganizationSettings }) {
  const organizations = await listOrganizations(database());
  const t = await getTranslations('upkeep');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="organizations">
      <h2 id="organizations">{t('organizationsTitle')}</h2>
      <ul className={styles.lines}>
        {organizations.map(({ id, name, slug, createdAt }) => (
          <li key={id}>
            <span>{name}</span>
            <span className={ui.small}>{t('organization', { slug, since: shownTime(createdAt, settings) })}</span>
          </li>
        ))}
      </ul>
      <h3>{t('addTitle')}</h3>
      <ActForm
        className={ui.stack}
        action={addOrganization}
        submit={t('add')}
        failed={problems('no-answer')}
        done={t('added')}
        clears
      >
        <label className={ui.field}>
          <span>{t('name')}</span>
          <input name="name" required maxLength={80} autoComplete="off" />
        </label>
        <label className={ui.field}>
          <span>{t('slug')}</span>
          <input
            name="slug"
            required
            maxLength={40}
            autoComplete="off"
            autoCapitalize="none"
            spellCheck={false}
            aria-describedby="slug-rule"
          />
        </label>
        <p id="slug-rule" className={ui.small}>
          {t('slugRule')}
        </p>
      </ActForm>
    </section>
  );
}
