import { getTranslations } from 'next-intl/server';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OverrideLine } from '@/db/queries/overrides';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import styles from './review.module.css';

/** Points that people gave, one after the other, each with its reason. */
export async function GivenList({
  given,
  settings,
}: {
  given: readonly OverrideLine[];
  settings: OrganizationSettings;
}) {
  const t = await getTranslations('review');
  if (given.length === 0) return null;
  return (
    <ul className={styles.written}>
      {given.map(({ id, points, reason, giver, givenAt }) => (
        <li key={id}>
          <p className={styles.words}>
            <b>{points === null ? t('tookBack') : t('gave', { points })}</b> {reason}
          </p>
          <p className={ui.small}>{t('by', { who: giver ?? t('erased'), at: shownTime(givenAt, settings) })}</p>
        </li>
      ))}
    </ul>
  );
}
