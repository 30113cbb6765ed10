import { getTranslations } from 'next-intl/server';
import type { GivenView } from '@/app/_server/turns/read-given';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { parts } from '@/lib/grading/grade';
import { isCase, tasksOf } from '@/lib/sets/tasks';
import learn from '../../learn.module.css';

/** What an assignment asks of whom it is given to, in plain words. */
export async function Asked({
  given: { assignment, body, extraTime },
  settings: { dateFormat },
}: {
  given: GivenView;
  settings: OrganizationSettings;
}) {
  const [t, rule, part] = [
    await getTranslations('turns'),
    await getTranslations('assignments.rules'),
    await getTranslations('debrief.parts'),
  ];
  const { rules, opensAt, closesAt } = assignment;
  const { minutes, late, weights, timeZone } = rules;
  const shown = (at: Date) => shownTime(at, { dateFormat, timeZone });
  const tasks = tasksOf(body);
  const cases = tasks.filter(isCase).length;
  const own = minutes === null ? 0 : Math.round(minutes * extraTime);
  return (
    <section className={ui.panel} aria-labelledby="asked">
      <h2 id="asked">{rule('heading')}</h2>
      <ul className={learn.rules}>
        <li>{t('tasks', { cases, questions: tasks.length - cases })}</li>
        <li>{rule('window', { opens: shown(opensAt), closes: shown(closesAt), zone: timeZone })}</li>
        <li>{rule('turns', { count: rules.turns })}</li>
        <li>{minutes === null ? rule('noLimit') : rule('limit', { minutes: minutes + own })}</li>
        {own > 0 && <li>{t('ownMinutes', { minutes: own })}</li>}
        <li>{late === 'refused' ? rule('lateRefused') : rule('lateTaken', late)}</li>
        <li>{rule(rules.mode)}</li>
        <li>{rule(rules.seeds)}</li>
        <li>
          {weights
            ? rule('weights', { weights: parts.map((one) => `${part(one)} ${weights[one]}`).join(', ') })
            : rule('usualWeights')}
        </li>
        <li>{t('tasksWeigh')}</li>
        {rules.anonymous && <li>{rule('anonymous')}</li>}
        {rules.secondMarker && <li>{rule('secondMarker')}</li>}
      </ul>
    </section>
  );
}
