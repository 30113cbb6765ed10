import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { readStatistics } from '@/app/_server/gradebook/read-statistics';
import { page } from '@/app/_server/guard';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { can } from '@/lib/accounts/can';
import { ItemPanel } from './item-panel';
import { Proposals } from './proposals';
import { SetFigures } from './set-figures';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('statistics');
  return { title: t('title') };
}

/** How the tasks of an assignment worked, in plain words beside the figures. */
export default page(
  '/assignments/[assignmentId]/statistics',
  async (permit, { params }: PageProps<'/assignments/[assignmentId]/statistics'>) => {
    const { assignmentId } = await params;
    const read = await readStatistics(assignmentId, new Date());
    if (!read) notFound();
    const t = await getTranslations('statistics');
    return (
      <>
        <SiteHeader />
        <main id="main" className={`${ui.page} ${ui.narrow}`}>
          <h1>{t('heading', { assignment: read.assignment.title })}</h1>
          <p className={ui.prose}>{t('body')}</p>
          <p>
            <Link href={`/assignments/${assignmentId}`} prefetch={false}>
              {t('back')}
            </Link>
          </p>
          {read.people === 0 ? (
            <p className={ui.notice}>{t('nobody')}</p>
          ) : (
            <>
              <SetFigures read={read} />
              {read.items.map((item) => (
                <ItemPanel key={item.place} item={item} parallel={read.parallel} />
              ))}
              <Proposals read={read} mayAccept={can(permit.session.actor, 'marks.change', permit.resource)} />
            </>
          )}
        </main>
      </>
    );
  },
);
