import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { TaskView, TurnView } from '@/app/_server/turns/read-turn';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import { openTask } from './actions';
import styles from './turn.module.css';

/** What there is to do in a turn, each with where it stands. */
export function Tasks({ view: { tasks, turn, open } }: { view: TurnView }) {
  const t = useTranslations('turns');
  return (
    <section className={ui.panel} aria-labelledby="tasks">
      <h2 id="tasks">{t('tasksTitle')}</h2>
      <ol className={styles.tasks}>
        {tasks.map((task) => (
          <li key={task.place} className={styles.task}>
            <span className={styles.name}>
              <b>{t(`kind.${task.kind}`, { place: task.place })}</b>
              <span className={ui.small}>
                {t(`state.${task.state}`)}
                {task.share !== undefined && ` · ${shareWords(t, task.share)}`}
              </span>
            </span>
            <WayOn task={task} turnId={turn.id} open={open} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function WayOn({
  task: { kind, place, state, href },
  turnId,
  open,
}: {
  task: TaskView;
  turnId: string;
  open: boolean;
}) {
  const t = useTranslations('turns');
  const problems = useTranslations('problems');
  if (state === 'not-opened')
    return (
      <ActForm action={openTask} submit={t('open', { place })} failed={problems('start-failed')} quiet>
        <input type="hidden" name="turnId" value={turnId} />
        <input type="hidden" name="place" value={place} />
      </ActForm>
    );
  if (!href) return null;
  const goesOn = open && state !== 'called';
  return (
    <Link className={styles.way} href={href} prefetch={false}>
      {t(goesOn ? `go.${kind}` : 'look', { place })}
    </Link>
  );
}

function shareWords(t: ReturnType<typeof useTranslations<'turns'>>, share: number | null): string {
  return share === null ? t('waitsForMark') : t('share', { percent: Math.round(share * 100) });
}
