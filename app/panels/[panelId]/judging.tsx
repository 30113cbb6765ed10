import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { topicNames } from '@/app/_server/readiness/topic-names';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import ui from '@/app/_ui/ui.module.css';
import type { Panel, PanelRating } from '@/db/queries/panels';
import { finishedJudges, spreadOf } from '@/lib/readiness/panel-result';
import { rateTask } from '../actions';
import { JudgedTask } from './judged-task';
import { TaskPlaces } from './task-places';

/** One task with its answer, and what this judge expects of somebody just good enough. */
export async function Judging({
  panel,
  ratings,
  judgeId,
  place,
}: {
  panel: Panel;
  ratings: readonly PanelRating[];
  judgeId: string;
  place: number;
}) {
  const t = await getTranslations('panels');
  const problems = await getTranslations('problems');
  const round = panel.state === 'second-round' ? 2 : 1;
  const task = panel.tasks[place - 1];
  if (!task) return null;
  if (round === 2 && !finishedJudges(ratings, 1, panel.tasks.length).includes(judgeId))
    return <p className={ui.notice}>{problems('panel-first')}</p>;
  const own = ratings.filter((one) => one.judgeId === judgeId && one.round <= round);
  const said = own.findLast((one) => one.task === place)?.expected;
  const percent = task.model.kind === 'choice';
  const shown = (expected: number) => Number((percent ? 100 * expected : expected).toFixed(1));
  const spread = round === 2 ? spreadOf(ratings, { round: 1, task: place }) : undefined;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="judging">
      <h2 id="judging">{t('judging', { place, tasks: panel.tasks.length })}</h2>
      <p>{t(round === 1 ? 'firstBody' : 'secondBody')}</p>
      <TaskPlaces
        panelId={panel.id}
        place={place}
        tasks={panel.tasks.length}
        rated={own.filter((one) => one.round === round).map((one) => one.task)}
      />
      <p className={ui.small}>{t('onTopic', { topic: topicNames()(task.topic) })}</p>
      {spread && (
        <p className={ui.notice}>
          {t(percent ? 'spreadPercent' : 'spreadPoints', {
            least: shown(spread.least),
            mean: shown(spread.mean),
            most: shown(spread.most),
            judges: spread.judges,
          })}
        </p>
      )}
      <ActForm
        key={`${round} ${place}`}
        className={ui.stack}
        action={rateTask}
        submit={t('rate')}
        failed={problems('no-answer')}
        done={t('rated')}
      >
        <input type="hidden" name="panelId" value={panel.id} />
        <input type="hidden" name="task" value={place} />
        <Field
          label={t(percent ? 'expectedPercent' : 'expectedPoints', { outOf: task.outOf })}
          name="expected"
          inputMode="decimal"
          required
          {...(said !== undefined && { defaultValue: shown(said) })}
        />
      </ActForm>
      {place < panel.tasks.length && (
        <p>
          <Link href={`/panels/${panel.id}?task=${place + 1}`} prefetch={false}>
            {t('next')}
          </Link>
        </p>
      )}
      <JudgedTask task={task} />
    </section>
  );
}
