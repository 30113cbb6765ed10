import { useTranslations } from 'next-intl';
import { dateOfDay } from '@/app/_server/sittings/day-in';
import type { ReviewCards } from '@/app/_server/sittings/review-cards';
import { ActForm } from '@/app/_ui/act-form';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { startReview } from './actions';

/** What is due to be asked again, or when the next will be. */
export function DuePanel({ due, settings }: { due: ReviewCards; settings: OrganizationSettings }) {
  const t = useTranslations('sittings');
  const problems = useTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="review">
      <h2 id="review">{t('reviewTitle')}</h2>
      <p>{t('reviewBody')}</p>
      {due.due.length > 0 && <p>{t('due', { count: due.due.length })}</p>}
      {due.due.length === 0 && due.nextDay === undefined && <p>{t('noneYet')}</p>}
      {due.due.length === 0 && due.nextDay !== undefined && (
        // A day on the calendar, whatever the hour.
        <p>{t('noneDue', { date: shownDate(dateOfDay(due.nextDay), { ...settings, timeZone: 'UTC' }) })}</p>
      )}
      {due.due.length + due.others.length > 0 && (
        <ActForm action={startReview} submit={t('review')} failed={problems('start-failed')}>
          {null}
        </ActForm>
      )}
    </section>
  );
}
