import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { deskOf } from '@/app/_server/permit';
import { readTurn } from '@/app/_server/turns/read-turn';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import { TimeLeft } from '@/app/_ui/time-left/time-left';
import ui from '@/app/_ui/ui.module.css';
import { listUnreadNudges } from '@/db/queries/nudges';
import { lateCost } from '@/lib/assignments/phase';
import learn from '../../learn.module.css';
import { HandIn } from './hand-in';
import { Messages } from './messages';
import { Outcome } from './outcome';
import { Tasks } from './tasks';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('turns');
  return { title: t('turnTitle') };
}

/** One turn at an assignment: its tasks and the time that is left, or how it went once that is told. */
export default page('/learn/turns/[turnId]', async (permit, { params }: PageProps<'/learn/turns/[turnId]'>) => {
  const { turnId } = await params;
  const desk = deskOf(permit);
  const now = new Date();
  const view = await readTurn(desk, turnId, now);
  if (!view) notFound();
  const settings = await settingsFor(permit.session);
  const { assignment, turn, open } = view;
  const here = { ...settings, timeZone: assignment.rules.timeZone };
  const cost = open ? lateCost(assignment, now, view.extraTime) : 0;
  const unread = await listUnreadNudges(database(), { assignmentId: assignment.id, userId: desk.learnerId });
  const t = await getTranslations('turns');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <div className={ui.head}>
          <h1>{assignment.title}</h1>
          <span className={ui.small}>{t('turn', { number: turn.number })}</span>
          {turn.demo && <span className={ui.small}>{t('demo')}</span>}
        </div>
        {open && <TimeLeft closesAt={turn.endsAt} now={now} settings={here} />}
        {cost > 0 && <p className={ui.notice}>{t('late', { cost })}</p>}
        {open && (
          <Messages
            turnId={turn.id}
            atFirst={unread.map(({ id, text }) => ({ id, text }))}
            words={{ heading: t('message'), read: t('messageRead') }}
          />
        )}
        {!open && <Outcome view={view} settings={here} />}
        <Tasks view={view} />
        {open && <HandIn view={view} />}
        <p>
          <Link className={learn.way} href={`/learn/assignments/${assignment.id}`} prefetch={false}>
            {t('toAssignment')}
          </Link>
        </p>
        <SafetyNote />
      </main>
    </>
  );
});
