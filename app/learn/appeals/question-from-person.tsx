import { getTranslations } from 'next-intl/server';
import type { SittingFromPerson } from '@/app/_server/review/from-person';
import ui from '@/app/_ui/ui.module.css';
import { CommentList } from '@/app/review/comments';
import { GivenList } from '@/app/review/given-list';
import styles from '@/app/review/review.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { appealQuestion } from './actions';
import { AppealHere } from './appeal-here';

/** What people said to a question and gave for it, beside what was computed, and the way to ask for another look. */
export async function QuestionFromPerson({
  read: { effective, given, comments, appeals },
  sittingId,
  place,
  settings,
}: {
  read: SittingFromPerson;
  sittingId: string;
  place: number;
  settings: OrganizationSettings;
}) {
  const t = await getTranslations('appeals');
  const counts = effective.get(place);
  const ownGiven = given.filter((one) => one.place === place);
  const ownComments = comments.filter((one) => one.place === place);
  const { computed = null, regraded = null, points = null, outOf = 1 } = counts ?? {};
  const changed = ownGiven.length > 0 || computed !== points;
  return (
    <section className={ui.stack} aria-labelledby="from-person">
      <h3 id="from-person">{t('title')}</h3>
      {changed && points !== null && (
        <p className={styles.totals}>
          <b>{t('countsQuestion', { points, outOf, computed: computed ?? t('notComputed') })}</b>
          {regraded !== null && regraded !== computed && <span>{t('regraded', { points: regraded })}</span>}
        </p>
      )}
      {!changed && ownComments.length === 0 && <p className={ui.small}>{t('nothing')}</p>}
      <GivenList given={ownGiven} settings={settings} />
      {ownComments.length > 0 && <h4>{t('comments')}</h4>}
      <CommentList comments={ownComments} settings={settings} />
      <AppealHere
        appeals={appeals.filter((one) => one.place === place)}
        action={appealQuestion}
        about={{ sittingId, place: String(place) }}
        settings={settings}
      />
    </section>
  );
}

/** What people said to a whole sitting; nothing where nobody did. */
export async function OnWhole({ read, settings }: { read: SittingFromPerson; settings: OrganizationSettings }) {
  const t = await getTranslations('appeals');
  const comments = read.comments.filter(({ place }) => place === null);
  if (comments.length === 0) return null;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="on-whole">
      <h2 id="on-whole">{t('comments')}</h2>
      <CommentList comments={comments} settings={settings} />
    </section>
  );
}
