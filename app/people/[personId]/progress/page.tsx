import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { readProgress } from '@/app/_server/evidence/read-progress';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { memberNamed } from '@/app/_server/people/change-member';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { ProgressView } from '@/app/learn/progress/progress-view';
import styles from '../../people.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('progress');
  return { title: t('title') };
}

/** What one person has shown, for those who answer for them. */
export default page(
  '/people/[personId]/progress',
  async (permit, { searchParams }: PageProps<'/people/[personId]/progress'>) => {
    const { organizationId, userId, name } = await memberNamed(permit);
    const { role } = await searchParams;
    const whose = { organizationId, learnerId: userId };
    // Whoever looks after others is told of their own work no sooner.
    const by = permit.session.actor.personId === userId ? 'learner' : 'staff';
    const progress = await readProgress(database(), whose, { now: new Date(), by });
    const settings = await settingsFor(permit.session);
    const t = await getTranslations('progress');
    const here = `/people/${userId}`;
    return (
      <>
        <SiteHeader />
        <main id="main" className={`${ui.page} ${ui.narrow}`}>
          <h1>{t('titleOf', { name })}</h1>
          <p className={ui.prose}>{progress.size === 0 ? t('emptyOf') : t('bodyOf')}</p>
          <ProgressView {...{ progress, settings, role, organizationId, by }} here={`${here}/progress`} />
          <p>
            <Link className={styles.way} href={here} prefetch={false}>
              {t('back', { name })}
            </Link>
          </p>
        </main>
      </>
    );
  },
);
