import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { drawnAgain } from '@/app/_server/intakes/intake-seed';
import type { DoneTask } from '@/app/_server/intakes/so-far';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import styles from '../intakes.module.css';

/** Every task with why it was chosen, and whether the stored draw gives it again: for whoever hears an appeal. */
export async function Choices({
  intakeId,
  tasks,
  settings,
}: {
  intakeId: string;
  tasks: readonly DoneTask[];
  settings: OrganizationSettings;
}) {
  const t = await getTranslations('intakes');
  const topicName = (id: string) => catalogue().topics.get(id)?.text.en.name ?? id;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="choices">
      <h2 id="choices">{t('choices')}</h2>
      <p className={ui.prose}>{t('choicesBody')}</p>
      <ol className={ui.stack}>
        {tasks.map((task) => (
          <li key={task.place}>
            <b>{task.attemptId ? t('aCase') : t('aQuestion', { kind: kindOf(task) })}</b>{' '}
            <span className={ui.small}>{shownTime(task.givenAt, settings)}</span>
            <p>
              {t('chosenFor', { topic: topicName(task.choice.topic), count: task.choice.contenders.length })}{' '}
              {t(drawnAgain(intakeId, task.choice) === task.poolTaskId ? 'replayed' : 'notReplayed')}
            </p>
            <details>
              <summary>{t('contenders')}</summary>
              <ul className={styles.contenders}>
                {task.choice.contenders.map(({ poolTaskId, worth }) => (
                  <li key={poolTaskId}>
                    <span className={ui.code}>{poolTaskId}</span>{' '}
                    {t('worth', { worth: Math.round(worth * 1000) / 1000 })}
                    {poolTaskId === task.poolTaskId && ` · ${t('drawn')}`}
                  </li>
                ))}
              </ul>
              <p className={ui.small}>{t('stream', { stream: task.choice.stream })}</p>
            </details>
            <p className={ui.small}>
              {task.done
                ? task.told
                    .map(({ topic, score, model }) =>
                      t('told', {
                        topic: topicName(topic),
                        score,
                        most: model.kind === 'choice' ? 1 : model.steps.length,
                      }),
                    )
                    .join(' · ')
                : t('nothingDone')}
            </p>
          </li>
        ))}
      </ol>
    </section>
  );
}

function kindOf({ task }: DoneTask): string {
  const kind = task?.spec?.kind;
  return (kind && catalogue().questions.get(kind)?.text.en.name) ?? '';
}
