import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { canBeMade } from '@/app/_server/gradebook/can-be-made';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listRegrades } from '@/db/queries/regrades';
import { findAssignmentsSet } from '@/db/queries/turn-work';
import { ChangesMade } from './changes-made';
import { Preview } from './preview';
import { ProposalForms } from './proposal-forms';
import { readProposal } from './read-proposal';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('marks');
  return { title: t('title') };
}

/** Changes of the marks of an assignment: what one would do, what was done, and the way back. */
export default page(
  '/assignments/[assignmentId]/marks',
  async (permit, { params, searchParams }: PageProps<'/assignments/[assignmentId]/marks'>) => {
    const { assignmentId } = await params;
    const query = await searchParams;
    const found = await findAssignmentsSet(database(), assignmentId);
    if (!found) notFound();
    const { assignment, body } = found;
    const read = readProposal(query);
    const proposal = read && (await canBeMade(assignmentId, read)) ? read : undefined;
    const t = await getTranslations('marks');
    return (
      <>
        <SiteHeader />
        <main id="main" className={`${ui.page} ${ui.narrow}`}>
          <h1>{t('heading', { assignment: assignment.title })}</h1>
          <p className={ui.prose}>{t('body')}</p>
          <p>
            <Link href={`/assignments/${assignmentId}`} prefetch={false}>
              {t('back')}
            </Link>
          </p>
          {proposal && <Preview assignment={assignment} change={proposal} />}
          {!proposal && query.kind !== undefined && query.kind !== 'choose' && (
            <p role="alert" className={ui.alert}>
              {t('unusable')}
            </p>
          )}
          <ProposalForms assignment={assignment} body={body} query={query} />
          <ChangesMade
            changes={await listRegrades(database(), assignmentId)}
            settings={await settingsFor(permit.session)}
          />
        </main>
      </>
    );
  },
);
