import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { findMostExtraTime, listAssignedClasses } from '@/db/queries/assigned-people';
import { findAssignment } from '@/db/queries/assignments';
import { can } from '@/lib/accounts/can';
import { phaseOf } from '@/lib/assignments/phase';
import styles from '../assignments.module.css';
import { Changes } from './changes';
import { People } from './people';
import { RulesInWords } from './rules-in-words';
import { WhatLearnersSee } from './what-learners-see';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('assignments');
  return { title: t('one') };
}

/** One assignment: what it asks, who is where, and what can still be changed. */
export default page(
  '/assignments/[assignmentId]',
  async (permit, { params }: PageProps<'/assignments/[assignmentId]'>) => {
    const { assignmentId } = await params;
    const found = await findAssignment(database(), { assignmentId, organizationId: organizationOf(permit) });
    if (!found) notFound();
    const changes = can(permit.session.actor, 'assignments.change', permit.resource);
    const settings = await settingsFor(permit.session);
    const mostExtraTime = await findMostExtraTime(database(), found.id);
    const classes = await listAssignedClasses(database(), found.id);
    const phase = phaseOf(found, new Date(), { extraTime: mostExtraTime });
    const t = await getTranslations('assignments');
    return (
      <>
        <SiteHeader />
        <main id="main" className={ui.page}>
          <h1>{found.title}</h1>
          <p className={ui.lead}>
            {t(`phase.${phase}`)}{' '}
            {classes.length > 0 && t('givenTo', { classes: classes.map(({ name }) => name).join(', ') })}
            {found.demo && ` (${t('invented')})`}
          </p>
          {found.archivedAt && <p className={ui.notice}>{t('awayBody')}</p>}
          <p className={styles.act}>
            <Link href={`/assignments/${found.id}/live`} prefetch={false}>
              {t('toLive')}
            </Link>
            <Link href={`/assignments/${found.id}/statistics`} prefetch={false}>
              {t('toStatistics')}
            </Link>
            {can(permit.session.actor, 'marks.change', permit.resource) && (
              <Link href={`/assignments/${found.id}/marks`} prefetch={false}>
                {t('toMarks')}
              </Link>
            )}
            {changes && (
              <Link href={`/assignments/new?like=${found.id}`} prefetch={false}>
                {t('giveAgain')}
              </Link>
            )}
          </p>
          <div className={styles.two}>
            <RulesInWords found={found} settings={settings} />
            <WhatLearnersSee found={found} settings={settings} mostExtraTime={mostExtraTime} />
          </div>
          <People found={found} settings={settings} changes={changes} />
          {changes && <Changes found={found} />}
        </main>
      </>
    );
  },
);
