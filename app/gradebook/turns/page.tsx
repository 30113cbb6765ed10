import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound, redirect } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { settleTurns } from '@/app/_server/gradebook/settle-turns';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { isNamed } from '@/app/_server/review/who';
import { shownTime } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { findTurnsAt } from '@/db/queries/gradebook';
import { listTurnTasks } from '@/db/queries/turn-work';
import { can } from '@/lib/accounts/can';
import { countingTurn } from '@/lib/gradebook/best-turn';
import { TurnTasks } from './turn-tasks';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('gradebook');
  return { title: t('title') };
}

/** What somebody did at an assignment, turn by turn: where a cell of the gradebook leads. */
export default page('/gradebook/turns', async (permit, { searchParams }: PageProps<'/gradebook/turns'>) => {
  const { person, assignment } = await searchParams;
  if (typeof person !== 'string' || typeof assignment !== 'string') redirect('/gradebook');
  const organizationId = organizationOf(permit);
  await settleTurns(organizationId, assignment);
  const found = await findTurnsAt(database(), { organizationId, assignmentId: assignment, personId: person });
  if (!found) notFound();
  const t = await getTranslations('gradebook');
  const settings = await settingsFor(permit.session);
  const unseen = !(await isNamed(found.assignment, new Date()));
  const counting = countingTurn(
    found.turns.map(({ turn, result }) => ({
      id: turn.id,
      number: turn.number,
      handedIn: turn.handedInAt !== null,
      total: result?.total ?? null,
      waiting: result?.waiting ?? 0,
    })),
  );
  const mayReview = can(permit.session.actor, 'review.see', permit.resource);
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('turnsTitle', { person: found.person, assignment: found.assignment.title })}</h1>
        <p>
          <Link href="/gradebook" prefetch={false}>
            {t('back')}
          </Link>
        </p>
        {unseen ? (
          <p className={ui.notice}>{t('unseenBody')}</p>
        ) : (
          found.turns.map(async ({ turn, result }) => (
            <section key={turn.id} className={`${ui.panel} ${ui.stack}`} aria-labelledby={`turn-${turn.number}`}>
              <div className={ui.head}>
                <h2 id={`turn-${turn.number}`}>{t('turn', { number: turn.number })}</h2>
                {counting?.id === turn.id && found.turns.length > 1 && <span className={ui.small}>{t('counts')}</span>}
              </div>
              <p>
                {turn.handedInAt
                  ? t(turn.handedInAt > found.assignment.closesAt ? 'handedInLate' : 'handedIn', {
                      at: shownTime(turn.handedInAt, settings),
                    })
                  : t('stillOpen', { at: shownTime(turn.startedAt, settings) })}
              </p>
              {result && (
                <>
                  <p className={ui.lead}>{t('totalIs', { total: result.total })}</p>
                  {result.waiting > 0 && <p>{t('waitingFor', { count: result.waiting })}</p>}
                  <TurnTasks
                    tasks={result.tasks}
                    places={await listTurnTasks(database(), turn.id)}
                    sittingId={turn.sittingId}
                    mayReview={mayReview}
                  />
                </>
              )}
            </section>
          ))
        )}
      </main>
    </>
  );
});
