import { getTranslations } from 'next-intl/server';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { GivenSet } from '@/db/queries/assignments';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { momentOf } from '@/lib/assignments/local-time';
import { toldAt } from '@/lib/assignments/phase';
import { parts } from '@/lib/grading/grade';
import { taskCount } from '@/lib/sets/set-body';
import styles from '../assignments.module.css';

export interface Told {
  found: GivenSet;
  settings: OrganizationSettings;
  /** The most that anybody gets on top of the minutes. */
  mostExtraTime: number;
}

/** What an assignment asks, in plain words. */
export async function RulesInWords({ found, settings }: Omit<Told, 'mostExtraTime'>) {
  const { rules, body, version, opensAt, closesAt } = found;
  const t = await getTranslations('assignments.rules');
  const part = await getTranslations('debrief.parts');
  const here = { dateFormat: settings.dateFormat, timeZone: rules.timeZone };
  const twice = [rules.opens, rules.closes].filter((local) => momentOf(local, rules.timeZone)?.shown === 'twice');
  const { weights, late } = rules;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="rules">
      <h2 id="rules">{t('heading')}</h2>
      <ul className={styles.facts}>
        <li>{t('set', { title: body.title, version, count: taskCount(body) })}</li>
        <li>
          {t('window', { opens: shownTime(opensAt, here), closes: shownTime(closesAt, here), zone: rules.timeZone })}
        </li>
        {twice.length > 0 && <li>{t('twice')}</li>}
        <li>{t(rules.mode)}</li>
        <li>{t('turns', { count: rules.turns })}</li>
        <li>{t(rules.seeds)}</li>
        <li>{rules.minutes === null ? t('noLimit') : t('limit', { minutes: rules.minutes })}</li>
        <li>{late === 'refused' ? t('lateRefused') : t('lateTaken', late)}</li>
        <li>
          {weights
            ? t('weights', { weights: parts.map((one) => `${part(one)} ${weights[one]}`).join(', ') })
            : t('usualWeights')}
        </li>
        {rules.anonymous && <li>{t('anonymous')}</li>}
        {rules.secondMarker && <li>{t('secondMarker')}</li>}
      </ul>
    </section>
  );
}

/** When outcomes are told, on the assignment's own clock. */
export function shownToldAt({ found, settings, mostExtraTime }: Told): string {
  const at = new Date(toldAt(found, mostExtraTime));
  return shownTime(at, { dateFormat: settings.dateFormat, timeZone: found.rules.timeZone });
}
