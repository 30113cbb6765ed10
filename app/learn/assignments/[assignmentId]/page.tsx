import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { deskOf } from '@/app/_server/permit';
import { readGiven } from '@/app/_server/turns/read-given';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import learn from '../../learn.module.css';
import { Asked } from './asked';
import { PhaseLine } from './phase-line';
import { Seen } from './seen';
import { YourTurns } from './your-turns';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('turns');
  return { title: t('assignment') };
}

/** An assignment as somebody has it: what it asks, what they will see, and the way in. */
export default page(
  '/learn/assignments/[assignmentId]',
  async (permit, { params }: PageProps<'/learn/assignments/[assignmentId]'>) => {
    const { assignmentId } = await params;
    const given = await readGiven(deskOf(permit), assignmentId, new Date());
    if (!given) notFound();
    const settings = await settingsFor(permit.session);
    const { assignment, body } = given;
    const t = await getTranslations('turns');
    return (
      <>
        <SiteHeader />
        <main id="main" className={`${ui.page} ${ui.narrow}`}>
          <div className={ui.head}>
            <h1>{assignment.title}</h1>
            {assignment.demo && <span className={ui.small}>{t('demo')}</span>}
          </div>
          <p className={ui.lead}>
            <PhaseLine given={given} settings={settings} />
          </p>
          {body.note && <p className={ui.prose}>{body.note}</p>}
          <YourTurns given={given} settings={settings} />
          <Asked given={given} settings={settings} />
          <Seen given={given} settings={settings} />
          <p>
            <Link className={learn.way} href="/learn" prefetch={false}>
              {t('toLearn')}
            </Link>
          </p>
          <SafetyNote />
        </main>
      </>
    );
  },
);
