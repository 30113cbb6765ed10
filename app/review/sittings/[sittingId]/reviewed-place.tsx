import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import type { ReviewedPlaceView } from '@/app/_server/review/hidden-marks';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { MarkedQuestion } from '@/app/_ui/questions/marked-question';
import ui from '@/app/_ui/ui.module.css';
import { placeMarked } from '@/app/learn/sittings/[sittingId]/ask';
import type { CommentLine } from '@/db/queries/comments';
import type { OverrideLine } from '@/db/queries/overrides';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import type { EffectiveQuestion } from '@/lib/reviewing/effective';
import { commentOnSitting, overrideQuestion } from '../../actions';
import { Comments } from '../../comments';
import { GivePoints } from '../../give-points';
import { GivenList } from '../../given-list';
import styles from '../../review.module.css';

interface Shown {
  place: ReviewedPlaceView;
  units: UnitChoice;
  /** Handed in. */
  finished: boolean;
  effective: ReadonlyMap<number, EffectiveQuestion>;
  given: readonly OverrideLine[];
  comments: readonly CommentLine[];
  settings: OrganizationSettings;
  writes: boolean;
}

/** One question with answer, key and mark, and what counts for it. */
export async function ReviewedPlace(shown: Shown) {
  const { place, units, finished, effective, given, comments, settings, writes } = shown;
  const t = await getTranslations('review');
  const marked = placeMarked(place, units);
  const counts = effective.get(place.place);
  if (!marked || !counts) return null;
  const about = { sittingId: place.sittingId, place: String(place.place) };
  const name = t('question', { place: place.place });
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="question">
      <h2 id="question">{name}</h2>
      {place.awaitsSecond && (
        <p className={ui.notice}>
          {t('secondWaits')}{' '}
          <Link className={styles.way} href="/review/second-marks" prefetch={false}>
            {t('secondTitle')}
          </Link>
        </p>
      )}
      <MarkedQuestion marked={marked} comment={place.mark?.manual?.comment} />
      <Counts counts={counts} />
      <GivenList given={given.filter((one) => one.place === place.place)} settings={settings} />
      {writes && finished && !place.awaitsSecond && (
        <GivePoints action={overrideQuestion} about={about} label={name} outOf={counts.outOf} given={counts.given} />
      )}
      <Comments
        comments={comments}
        settings={settings}
        label={name}
        commenting={writes ? { action: commentOnSitting, about } : undefined}
      />
    </section>
  );
}

async function Counts({ counts: { computed, regraded, given, points, outOf } }: { counts: EffectiveQuestion }) {
  const t = await getTranslations('review');
  if (points === null) return <p>{t('waits')}</p>;
  return (
    <p className={styles.totals}>
      {computed !== null && <span>{t('partComputed', { points: computed, outOf })}</span>}
      {regraded !== null && regraded !== computed && <span>{t('partRegraded', { points: regraded, outOf })}</span>}
      {given !== undefined && <span>{t('partGiven', { points: given })}</span>}
      <b>{t('partCounts', { points, outOf })}</b>
    </p>
  );
}
