import { useTranslations } from 'next-intl';
import type { DueNow } from '@/app/_server/sittings/due-now';
import { ActForm } from '@/app/_ui/act-form';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { startReview } from './actions';

/** What is due to be asked again, or when the next will be. */
export function DuePanel({ due, settings }: { due: DueNow; settings: OrganizationSettings }) {
  const t = useTranslations('sittings');
  const problems = useTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="review">
      <h2 id="review">{t('reviewTitle')}</h2>
      <p>{t('reviewBody')}</p>
      {due.now.length > 0 ? (
        <>
          <p>{t('due', { count: due.now.length })}</p>
          <ActForm className={ui.stack} action={startReview} submit={t('review')} failed={problems('start-failed')}>
            {null}
          </ActForm>
        </>
      ) : (
        // A day on the calendar, whatever the hour.
        <p>{due.next ? t('noneDue', { date: shownDate(due.next, { ...settings, timeZone: 'UTC' }) }) : t('noneYet')}</p>
      )}
    </section>
  );
}
