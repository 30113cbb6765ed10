import { useLocale, useTranslations } from 'next-intl';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { shownTime } from '../shown-date';
import { Countdown } from './countdown';

/** How long there is until something closes, by the server's clock, and when that is. */
export function TimeLeft({
  closesAt,
  now,
  settings,
}: {
  closesAt: Date;
  now: Date;
  settings: Pick<OrganizationSettings, 'dateFormat' | 'timeZone'>;
}) {
  const t = useTranslations('timeLeft');
  const words = {
    left: t.raw('left') as string,
    lastMinute: t('lastMinute'),
    over: t('over'),
    closes: t('closes', { time: shownTime(closesAt, settings) }),
  };
  return <Countdown left={closesAt.getTime() - now.getTime()} words={words} locale={useLocale()} />;
}
