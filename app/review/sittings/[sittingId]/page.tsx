import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { readDisplay } from '@/app/_server/display';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { deskBeside } from '@/app/_server/permit';
import { effectiveSitting } from '@/app/_server/review/effective-work';
import { hidingFirstMarks } from '@/app/_server/review/hidden-marks';
import { readReviewedSitting } from '@/app/_server/review/reviewed';
import { readSitting } from '@/app/_server/sittings/read-sitting';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listAppealsOf } from '@/db/queries/appeals';
import { listComments } from '@/db/queries/comments';
import { can } from '@/lib/accounts/can';
import { commentOnSitting } from '../../actions';
import { AppealsOf } from '../../appeals-of';
import { Comments } from '../../comments';
import styles from '../../review.module.css';
import { WorkHead } from '../../work-head';
import { PlaceLinks } from './place-links';
import { ReviewedPlace } from './reviewed-place';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('review');
  return { title: t('sittingTitle') };
}

/** Questions that somebody else answered, each with its key, its mark, and room for what a person says and gives. */
export default page(
  '/review/sittings/[sittingId]',
  async (permit, { params, searchParams }: PageProps<'/review/sittings/[sittingId]'>) => {
    const { sittingId } = await params;
    const now = new Date();
    const work = await readReviewedSitting(permit, sittingId, now);
    const read = work && (await readSitting(deskBeside(permit, work.learnerId), sittingId));
    if (!work || !read) notFound();
    const { at } = await searchParams;
    const { personId } = permit.session.actor;
    const marked = await hidingFirstMarks(
      read.places.filter(({ mark }) => mark),
      personId,
    );
    const place = marked.find((one) => String(one.place) === at) ?? marked[0];
    const [{ units }, settings, comments, appeals, counted, t] = await Promise.all([
      readDisplay(),
      settingsFor(permit.session),
      listComments(database(), { sittingId }),
      listAppealsOf(database(), { sittingId }),
      effectiveSitting(
        work,
        sittingId,
        marked.flatMap(({ mark }) => mark ?? []),
      ),
      getTranslations('review'),
    ]);
    const writes = can(permit.session.actor, 'review.write', permit.resource);
    const shown = { ...counted, settings, writes };
    return (
      <>
        <SiteHeader />
        <main id="main" className={`${ui.page} ${styles.work}`}>
          <div className={styles.column}>
            <WorkHead work={work} title={t('sittingTitle')} settings={settings} />
            {place ? (
              <ReviewedPlace
                place={place}
                units={units}
                finished={work.finishedAt !== null}
                comments={comments.filter((one) => one.place === place.place)}
                {...shown}
              />
            ) : (
              <p className={ui.panel}>{t('noneMarked')}</p>
            )}
          </div>
          <div className={styles.column}>
            <PlaceLinks places={marked} effective={counted.effective} comments={comments} at={place?.place} />
            <AppealsOf appeals={appeals} settings={settings} now={now} writes={writes} />
            <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="whole">
              <h2 id="whole">{t('whole')}</h2>
              <Comments
                comments={comments.filter((one) => one.place === null)}
                settings={settings}
                label={t('onWhole')}
                commenting={writes ? { action: commentOnSitting, about: { sittingId } } : undefined}
              />
            </section>
          </div>
          <div className={styles.foot}>
            <SafetyNote />
          </div>
        </main>
      </>
    );
  },
);
