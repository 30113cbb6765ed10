import { getTranslations } from 'next-intl/server';
import type { DebriefView } from '@/app/_server/debrief-view';
import ui from '@/app/_ui/ui.module.css';
import { Notes } from '@/app/learn/cases/[attemptId]/debrief/marks';
import type { OverrideLine } from '@/db/queries/overrides';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import type { EffectiveCase, EffectivePart } from '@/lib/reviewing/effective';
import { overridePart } from '../../actions';
import { GivePoints } from '../../give-points';
import { GivenList } from '../../given-list';
import styles from '../../review.module.css';

interface Shown {
  view: DebriefView;
  effective: EffectiveCase;
  given: readonly OverrideLine[];
  settings: OrganizationSettings;
  writes: boolean;
}

/** Points by part: computed, after changes for everybody, given by a person, and what counts. */
export async function PartPoints(shown: Shown) {
  const t = await getTranslations('review');
  const { computed, regraded, total } = shown.effective;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="parts">
      <h2 id="parts">{t('partsTitle')}</h2>
      <p className={styles.totals}>
        <span>{t('totalComputed', { total: computed })}</span>
        {regraded !== computed && <span>{t('totalRegraded', { total: regraded })}</span>}
        <b>{t('totalCounts', { total })}</b>
      </p>
      <ul className={styles.parts}>
        {shown.effective.parts.map((part) => (
          <li key={part.part}>
            <Part part={part} {...shown} />
          </li>
        ))}
      </ul>
    </section>
  );
}

async function Part({ part, view, given, settings, writes }: Shown & { part: EffectivePart }) {
  const [t, words] = await Promise.all([getTranslations('review'), getTranslations('debrief')]);
  const { computed, regraded } = part;
  const name = words(`parts.${part.part}`);
  return (
    <>
      <h3>{name}</h3>
      <p className={styles.totals}>
        <span>{t('partComputed', computed)}</span>
        {(regraded.points !== computed.points || regraded.outOf !== computed.outOf) && (
          <span>{t('partRegraded', regraded)}</span>
        )}
        {part.given !== undefined && <span>{t('partGiven', { points: part.given })}</span>}
        <b>{t('partCounts', { points: part.points, outOf: regraded.outOf })}</b>
      </p>
      <details className={styles.more}>
        <summary>
          {t('why')}
          <span className={ui.unseen}>{` ${name}`}</span>
        </summary>
        <Notes view={view} notes={view.grade.notes.filter((note) => note.part === part.part)} />
      </details>
      <GivenList given={given.filter((one) => one.part === part.part)} settings={settings} />
      {writes && regraded.outOf > 0 && (
        <GivePoints
          action={overridePart}
          about={{ attemptId: view.attempt.id, part: part.part }}
          label={name}
          outOf={regraded.outOf}
          given={part.given}
        />
      )}
    </>
  );
}
