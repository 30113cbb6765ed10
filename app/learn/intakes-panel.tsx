import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { Intake } from '@/db/queries/intakes';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import styles from './learn.module.css';

/** One's own new-hire checks: the way back into one that is under way, and how others came out. */
export async function IntakesPanel({
  intakes,
  settings,
}: {
  intakes: readonly Intake[];
  settings: OrganizationSettings;
}) {
  if (intakes.length === 0) return null;
  const t = await getTranslations('intakes');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="intakes">
      <h2 id="intakes">{t('waitingTitle')}</h2>
      {intakes.map(({ id, profile, finishedAt }) => (
        <p key={id}>
          {finishedAt
            ? t('finishedBody', { role: profile.text.en.name, time: shownTime(finishedAt, settings) })
            : t('waitingBody', { role: profile.text.en.name })}{' '}
          <Link className={styles.way} href={`/learn/intakes/${id}`} prefetch={false}>
            {t(finishedAt ? 'look' : 'goOn')}
          </Link>
        </p>
      ))}
    </section>
  );
}
