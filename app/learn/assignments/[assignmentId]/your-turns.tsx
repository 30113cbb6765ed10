import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { GivenView, TurnLine } from '@/app/_server/turns/read-given';
import { ActForm } from '@/app/_ui/act-form';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { countingTurn } from '@/lib/gradebook/best-turn';
import learn from '../../learn.module.css';
import { beginTurn } from './actions';

/** The turns that one has had, and the way into the next. */
export function YourTurns({ given, settings }: { given: GivenView; settings: OrganizationSettings }) {
  const t = useTranslations('turns');
  const { turns, assignment } = given;
  const counts = countingTurn(
    turns.map(({ id, number, handedInAt, outcome }) => ({
      id,
      number,
      handedIn: handedInAt !== null,
      total: outcome?.total ?? null,
      waiting: outcome?.waiting ?? 0,
    })),
  );
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="your-turns">
      <h2 id="your-turns">{t('yours', { used: turns.length, allowed: assignment.rules.turns })}</h2>
      {turns.length > 0 && (
        <ul>
          {turns.map((turn) => (
            <li key={turn.id}>
              <Link className={learn.way} href={`/learn/turns/${turn.id}`} prefetch={false}>
                {t('turn', { number: turn.number })}
              </Link>{' '}
              <TurnState turn={turn} given={given} settings={settings} />
              {turns.length > 1 && turn.outcome && counts?.id === turn.id && ` · ${t('counts')}`}
            </li>
          ))}
        </ul>
      )}
      <WayIn given={given} />
    </section>
  );
}

function TurnState({
  turn: { handedInAt, outcome },
  given: { assignment },
  settings: { dateFormat },
}: {
  turn: TurnLine;
  given: GivenView;
  settings: OrganizationSettings;
}) {
  const t = useTranslations('turns');
  if (!handedInAt) return t('stateOpen');
  const time = shownTime(handedInAt, { dateFormat, timeZone: assignment.rules.timeZone });
  const waiting = outcome?.waiting ?? 0;
  return (
    <>
      {t('stateHandedIn', { time })}
      {outcome && ` · ${t('total', { total: outcome.total })}`}
      {waiting > 0 && ` · ${t('waiting', { count: waiting })}`}
    </>
  );
}

function WayIn({ given: { assignment, phase, turns } }: { given: GivenView }) {
  const t = useTranslations('turns');
  const problems = useTranslations('problems');
  const open = turns.find(({ handedInAt }) => handedInAt === null);
  if (open)
    return (
      <p>
        <Link className={ui.primary} href={`/learn/turns/${open.id}`} prefetch={false}>
          {t('goOn')}
        </Link>
      </p>
    );
  if (phase === 'coming') return <p>{t('notYet')}</p>;
  if (phase === 'closed' || assignment.archivedAt) return turns.length === 0 ? <p>{t('missed')}</p> : null;
  if (turns.length >= assignment.rules.turns) return <p>{t('used')}</p>;
  return (
    <>
      <p>{t(assignment.rules.minutes === null ? 'beginBody' : 'beginBodyTimed')}</p>
      {phase === 'late' && <p className={ui.notice}>{t('beginLate', { cost: lateCostOf(assignment.rules.late) })}</p>}
      <ActForm
        action={beginTurn}
        submit={t(turns.length > 0 ? 'beginAgain' : 'begin')}
        failed={problems('start-failed')}
      >
        <input type="hidden" name="assignmentId" value={assignment.id} />
      </ActForm>
    </>
  );
}

function lateCostOf(late: GivenView['assignment']['rules']['late']): number {
  return late === 'refused' ? 0 : late.cost;
}
