import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { organizationOf, type SignedInPermit } from '@/app/_server/permit';
import { topicNames } from '@/app/_server/readiness/topic-names';
import { findScheme } from '@/app/_server/schemes';
import { ActForm } from '@/app/_ui/act-form';
import { Sideways } from '@/app/_ui/sideways';
import ui from '@/app/_ui/ui.module.css';
import { logits } from '@/app/schemes/logits';
import styles from '@/app/schemes/schemes.module.css';
import type { Panel, PanelRating } from '@/db/queries/panels';
import { can } from '@/lib/accounts/can';
import { panelResult, ratingsOf, spreadOf } from '@/lib/readiness/panel-result';
import { adoptCut } from '../actions';

/** The line that a closed panel set, what was said of each task, and for who runs it what each judge came to. */
export async function PanelOutcome({
  panel,
  ratings,
  judges,
  permit,
}: {
  panel: Panel;
  ratings: readonly PanelRating[];
  judges: readonly { judgeId: string; name: string | null }[];
  permit: SignedInPermit;
}) {
  const t = await getTranslations('panels');
  const problems = await getTranslations('problems');
  const result = panelResult(panel.tasks, ratings);
  if (!result) return <p className={ui.notice}>{problems('panel-too-few')}</p>;
  const nameOf = topicNames();
  const scheme = await findScheme(database(), organizationOf(permit), panel.schemeId);
  const runs = can(permit.session.actor, 'panels.run', permit.resource);
  const sumOf = (judgeId: string) =>
    ratingsOf(ratings, { judgeId, round: 2, tasks: panel.tasks.length })?.reduce((sum, one) => sum + one, 0);
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="outcome">
      <h2 id="outcome">{t('outcomeTitle')}</h2>
      {'why' in result.cut ? (
        <p className={ui.notice}>{t(result.cut.why)}</p>
      ) : (
        <p className={ui.lead}>
          {t('outcome', { cut: logits(result.cut.ability), error: result.cut.standardError.toFixed(2) })}
        </p>
      )}
      <dl className={ui.facts}>
        <dt>{t('raw')}</dt>
        <dd>{t('rawIs', { points: result.points.toFixed(2), outOf: result.outOf })}</dd>
        <dt>{t('between')}</dt>
        <dd>{result.between.toFixed(2)}</dd>
        <dt>{t('errorOfRaw')}</dt>
        <dd>{result.standardError.toFixed(2)}</dd>
        <dt>{t('judgesCounted')}</dt>
        <dd>{result.judges}</dd>
      </dl>
      <details>
        <summary>{t('byTask')}</summary>
        <Sideways label={t('byTask')}>
          <table className={styles.table}>
            <thead>
              <tr>
                {(['task', 'first', 'second', 'outOf'] as const).map((name) => (
                  <th key={name} scope="col">
                    {t(`col.${name}`)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {panel.tasks.map((task, index) => (
                <tr key={task.poolTaskId}>
                  <th scope="row">{t('taskNamed', { place: index + 1, topic: nameOf(task.topic) })}</th>
                  {[1, 2].map((round) => {
                    const spread = spreadOf(ratings, { round, task: index + 1 });
                    return (
                      <td key={round}>
                        {spread
                          ? `${spread.least.toFixed(2)} – ${spread.mean.toFixed(2)} – ${spread.most.toFixed(2)}`
                          : '–'}
                      </td>
                    );
                  })}
                  <td>{task.outOf}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Sideways>
      </details>
      {runs && (
        <details>
          <summary>{t('byJudge')}</summary>
          <ul>
            {judges.map(({ judgeId, name }) => (
              <li key={judgeId}>
                {t('judgeSum', { name: name ?? t('gone'), sum: sumOf(judgeId)?.toFixed(2) ?? '–' })}
              </li>
            ))}
          </ul>
        </details>
      )}
      {panel.adoptedVersion !== null && <p>{t('adopted', { version: panel.adoptedVersion })}</p>}
      {panel.adoptedVersion === null &&
        scheme &&
        !('why' in result.cut) &&
        can(permit.session.actor, 'schemes.change', permit.resource) && (
          <ActForm className={ui.stack} action={adoptCut} submit={t('adopt')} failed={problems('no-answer')}>
            <input type="hidden" name="panelId" value={panel.id} />
            <label className={ui.field}>
              <span>{t('note')}</span>
              <textarea name="note" rows={3} required maxLength={1000} />
            </label>
            <p className={ui.small}>{t('adoptRule', { version: scheme.version + 1 })}</p>
          </ActForm>
        )}
    </section>
  );
}
