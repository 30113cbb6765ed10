import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { ReviewedPlaceView } from '@/app/_server/review/hidden-marks';
import lines from '@/app/_ui/lines.module.css';
import ui from '@/app/_ui/ui.module.css';
import type { CommentLine } from '@/db/queries/comments';
import type { EffectiveQuestion } from '@/lib/reviewing/effective';

/** The questions of a sitting, each with what counts for it. */
export function PlaceLinks({
  places,
  effective,
  comments,
  at,
}: {
  places: readonly ReviewedPlaceView[];
  effective: ReadonlyMap<number, EffectiveQuestion>;
  comments: readonly CommentLine[];
  at: number | undefined;
}) {
  const t = useTranslations('review');
  if (places.length === 0) return null;
  return (
    <nav className={`${ui.panel} ${ui.stack}`} aria-labelledby="places">
      <h2 id="places">{t('questions')}</h2>
      <ol className={lines.lines}>
        {places.map(({ place }) => {
          const counts = effective.get(place);
          const written = comments.filter((one) => one.place === place).length;
          return (
            <li key={place}>
              <Link
                className={lines.way}
                href={`?at=${place}`}
                prefetch={false}
                aria-current={place === at ? 'true' : undefined}
              >
                {t('question', { place })}
              </Link>
              <span className={ui.small}>
                {counts?.points === null || counts === undefined
                  ? t('waits')
                  : t('partCounts', { points: counts.points, outOf: counts.outOf })}
                {counts?.given !== undefined && ` · ${t('byPerson')}`}
                {written > 0 && ` · ${t('commentCount', { count: written })}`}
              </span>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
