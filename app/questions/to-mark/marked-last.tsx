import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import lines from '@/app/_ui/lines.module.css';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import { listMarkedTexts, type MarkedText } from '@/db/queries/manual-marks';
import { awaitsSecond } from '@/db/queries/second-marks';
import type { OrganizationSettings } from '@/lib/accounts/settings';

/** Enough to find the one that one was unsure of. */
const LISTED = 10;

/** What was marked last, to be marked again where somebody thinks better of it. */
export async function MarkedLast({
  organizationId,
  readerId,
  settings,
}: {
  organizationId: string;
  readerId: string;
  settings: OrganizationSettings;
}) {
  const marked = await markedFor(readerId, await listMarkedTexts(database(), organizationId, LISTED));
  const t = await getTranslations('written');
  if (marked.length === 0) return null;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="recent">
      <h2 id="recent">{t('marking.recent')}</h2>
      <ul className={lines.lines}>
        {marked.map(({ sittingId, place, score, asked: { steps }, markedAt, marker }) => (
          <li key={`${sittingId} ${place} ${markedAt.getTime()}`}>
            <span>
              {t('marking.recentLine', {
                score,
                steps,
                marker: marker ?? t('erased'),
                at: shownTime(markedAt, settings),
              })}
            </span>
            <Link
              className={lines.way}
              href={`/questions/to-mark?${new URLSearchParams({ sitting: sittingId, place: String(place) })}`}
              prefetch={false}
            >
              {t('marking.change')}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Without first marks of others that wait for a second, which must not know them. */
async function markedFor(readerId: string, marked: readonly MarkedText[]): Promise<MarkedText[]> {
  const hidden = await Promise.all(
    marked.map(async (one) => one.markedBy !== readerId && (await awaitsSecond(database(), one))),
  );
  return marked.filter((_, index) => !hidden[index]);
}
