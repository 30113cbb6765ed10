import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getMessages, getTranslations } from 'next-intl/server';
import { liveView } from '@/app/_server/assignments/live-view';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { findAssignment } from '@/db/queries/assignments';
import { can } from '@/lib/accounts/can';
import { expectedMinutes } from '@/lib/assignments/whereabouts';
import { isCase, tasksOf } from '@/lib/sets/tasks';
import { sendNudge } from '../../actions';
import { LivePeople } from './live-people';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('assignments.live');
  return { title: t('title') };
}

/** Who is where at an assignment, again every few seconds. */
export default page(
  '/assignments/[assignmentId]/live',
  async (permit, { params }: PageProps<'/assignments/[assignmentId]/live'>) => {
    const { assignmentId } = await params;
    const found = await findAssignment(database(), { assignmentId, organizationId: organizationOf(permit) });
    if (!found) notFound();
    const t = await getTranslations('assignments.live');
    const problems = await getTranslations('problems');
    const { live } = (await getMessages()).assignments;
    const tasks = tasksOf(found.body).map((task) => ({
      kind: isCase(task) ? ('case' as const) : ('question' as const),
    }));
    const expected = expectedMinutes(tasks, found.rules.minutes);
    return (
      <>
        <SiteHeader />
        <main id="main" className={ui.page}>
          <h1>{t('heading', { title: found.title })}</h1>
          <LivePeople
            assignmentId={found.id}
            first={await liveView(found, new Date())}
            words={{ ...live, failed: problems('no-answer') }}
            {...(can(permit.session.actor, 'assignments.change', permit.resource) && { send: sendNudge })}
          />
          <p className={`${ui.small} ${ui.prose}`}>
            {t('care', { case: Math.round(expected.case), question: Math.round(expected.question) })}
          </p>
          <p>
            <Link href={`/assignments/${found.id}`} prefetch={false}>
              {t('back')}
            </Link>
          </p>
        </main>
      </>
    );
  },
);
