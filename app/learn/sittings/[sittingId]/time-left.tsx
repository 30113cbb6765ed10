'use client';

import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useEffect, useState } from 'react';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';

const MINUTE = 60_000;

/**
 * Minutes left by the server's clock: only what has passed since the page came is counted here.
 *
 * @param closesAt  By the server, like `now`: milliseconds since 1970.
 */
export function TimeLeft({
  closesAt,
  now,
  settings,
}: {
  closesAt: number;
  now: number;
  settings: Pick<OrganizationSettings, 'dateFormat' | 'timeZone'>;
}) {
  const t = useTranslations('sittings');
  const router = useRouter();
  const [left, setLeft] = useState(closesAt - now);
  useEffect(() => {
    const came = performance.now();
    const tick = () => setLeft(closesAt - now - (performance.now() - came));
    const timer = setInterval(tick, 5000);
    return () => clearInterval(timer);
  }, [closesAt, now]);
  const over = left <= 0;
  useEffect(() => {
    // What was on its way still counts for a moment; then the page shows how it went.
    const timer = over ? setTimeout(() => router.refresh(), 16_000) : undefined;
    return () => clearTimeout(timer);
  }, [over, router]);
  const words = over
    ? t('timeOver')
    : left < MINUTE
      ? t('lastMinute')
      : t('timeLeft', { minutes: Math.floor(left / MINUTE) });
  return (
    <p className={left < 5 * MINUTE ? ui.notice : undefined}>
      <span role="timer">{words}</span> · {t('closes', { time: shownTime(new Date(closesAt), settings) })}
      {/* Said twice and no oftener, where the minutes are not watched. */}
      <span role="status" className={ui.unseen}>
        {left < MINUTE ? words : left < 5 * MINUTE ? t('timeLeft', { minutes: 5 }) : ''}
      </span>
    </p>
  );
}
