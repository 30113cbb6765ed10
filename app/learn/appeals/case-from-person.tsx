import { getTranslations } from 'next-intl/server';
import type { DebriefView } from '@/app/_server/debrief-view';
import { readCaseFromPerson } from '@/app/_server/review/from-person';
import ui from '@/app/_ui/ui.module.css';
import { CommentList } from '@/app/review/comments';
import { GivenList } from '@/app/review/given-list';
import styles from '@/app/review/review.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { appealAttempt } from './actions';
import { AppealHere } from './appeal-here';

/** What people said to a case and gave for it, beside what was computed, and the way to ask for another look. */
export async function CaseFromPerson({ view, settings }: { view: DebriefView; settings: OrganizationSettings }) {
  const attemptId = view.attempt.id;
  const read = await readCaseFromPerson(attemptId, view.grade, new Date());
  if (!read) return null;
  const { effective, given, comments, appeals } = read;
  const [t, say, words] = await Promise.all([
    getTranslations('appeals'),
    getTranslations('review'),
    getTranslations('debrief'),
  ]);
  const changed = effective.total !== effective.computed || given.length > 0;
  const acts = [...new Set(comments.flatMap(({ seq }) => seq ?? []))].sort((one, other) => one - other);
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="from-person">
      <h2 id="from-person">{t('title')}</h2>
      {changed && (
        <p className={styles.totals}>
          <b>{t('counts', { total: effective.total, computed: effective.computed })}</b>
          {effective.regraded !== effective.computed && <span>{t('regraded', { points: effective.regraded })}</span>}
        </p>
      )}
      {!changed && comments.length === 0 && <p className={ui.small}>{t('nothing')}</p>}
      {effective.parts.map((part) => {
        const own = given.filter((one) => one.part === part.part);
        if (own.length === 0) return null;
        const name = words(`parts.${part.part}`);
        const { points: computed } = part.computed;
        const { outOf } = part.regraded;
        return (
          <div key={part.part} className={styles.comments}>
            <p>
              {part.given === undefined
                ? `${name}: ${say('partCounts', { points: part.points, outOf })}`
                : t('part', { part: name, computed, given: part.given, points: part.points, outOf })}
            </p>
            <GivenList given={own} settings={settings} />
          </div>
        );
      })}
      {comments.length > 0 && <h3>{t('comments')}</h3>}
      {acts.map((seq) => (
        <div key={seq} className={styles.comments}>
          <p className={ui.small}>{t('onAct', { name: actName(view, seq) ?? say('onAct', { seq }) })}</p>
          <CommentList comments={comments.filter((one) => one.seq === seq)} settings={settings} />
        </div>
      ))}
      <CommentList comments={comments.filter(({ seq }) => seq === null)} settings={settings} />
      <AppealHere appeals={appeals} action={appealAttempt} about={{ attemptId }} settings={settings} />
    </section>
  );
}

/** What a reading or a finding was of. */
function actName({ attempt: { readings } }: DebriefView, seq: number): string | undefined {
  const reading = readings.find((one) => one.seq === seq || one.items.some(({ finding }) => finding?.seq === seq));
  return reading?.check.name;
}
