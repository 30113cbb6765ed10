import { useTranslations } from 'next-intl';
import type { GivenView } from '@/app/_server/turns/read-given';
import { shownTime } from '@/app/_ui/shown-date';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { closesFor, takenUntil } from '@/lib/assignments/phase';

/** Until when what is possible, in one sentence, by the clock of the assignment. */
export function PhaseLine({
  given: { assignment, phase, extraTime, untold, tellsAt },
  settings: { dateFormat },
}: {
  given: GivenView;
  settings: OrganizationSettings;
}) {
  const t = useTranslations('turns.phase');
  const shown = (at: Date) => shownTime(at, { dateFormat, timeZone: assignment.rules.timeZone });
  switch (phase) {
    case 'coming':
      return t('coming', { time: shown(assignment.opensAt) });
    case 'open':
      return t('open', { time: shown(new Date(closesFor(assignment, extraTime))) });
    case 'late':
      return t('late', { time: shown(new Date(takenUntil(assignment, extraTime))) });
    case 'closed':
      return untold ? t('untold', { time: shown(tellsAt) }) : t('closed');
  }
}
