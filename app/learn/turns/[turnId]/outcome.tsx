import { useTranslations } from 'next-intl';
import type { TurnView } from '@/app/_server/turns/read-turn';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import { ChangeInWords } from '@/app/assignments/[assignmentId]/marks/change-in-words';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { lateCost } from '@/lib/assignments/phase';

/** That a turn is handed in, and what it came to once that is told. */
export function Outcome({
  view: { turn, assignment, extraTime, outcome, changes, tellsAt },
  settings,
}: {
  view: TurnView;
  /** In the zone of the assignment. */
  settings: Pick<OrganizationSettings, 'dateFormat' | 'timeZone'>;
}) {
  const t = useTranslations('turns');
  const { handedInAt } = turn;
  const cost = handedInAt ? lateCost(assignment, handedInAt, extraTime) : 0;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="outcome">
      <h2 id="outcome">{t('outcome')}</h2>
      <p className={ui.lead}>
        {outcome ? t('total', { total: outcome.total }) : t('untold', { time: shownTime(tellsAt, settings) })}
      </p>
      {handedInAt && <p>{t('stateHandedIn', { time: shownTime(handedInAt, settings) })}</p>}
      {cost > 0 && <p>{t('wasLate', { cost })}</p>}
      {changes.map(({ id, change, reason }) => (
        <p key={id}>
          {t('changed')} <ChangeInWords change={change} /> {reason}
        </p>
      ))}
      {outcome && outcome.waiting > 0 && <p>{t('waiting', { count: outcome.waiting })}</p>}
    </section>
  );
}
