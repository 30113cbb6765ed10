import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { env } from '@/app/_server/env';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { listBackUps } from '@/app/_server/upkeep/back-ups';
import { ActForm } from '@/app/_ui/act-form';
import styles from '@/app/_ui/lines.module.css';
import { shownTime } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { backUpNow } from './actions';
import { Organizations } from './organizations';

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
      <p className={ui.notice}>{t('backUpsWarning')}</p>
      <ActForm
        className={styles.onScreen}
        action={backUpNow}
        submit={t('backUpNow')}
        failed={problems('no-answer')}
        done={t('backedUp')}
      >
        {null}
      </ActForm>
      {backUps.length === 0 && <p>{t('noBackUps')}</p>}
      <ul className={styles.lines}>
        {backUps.map(({ file, madeAt, bytes }) => (
          <li key={file}>
            <span>{shownTime(madeAt, settings)}</span>
            <span className={ui.small}>{t('size', { megabytes: bytes / 1e6 })}</span>
            <a className={`${styles.way} ${styles.onScreen}`} href={`/upkeep/back-ups/${file}`} download>
              {t('download', { when: shownTime(madeAt, settings) })}
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
