import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import ui from '@/app/_ui/ui.module.css';
import type { listTurnTasks } from '@/db/queries/turn-work';
import type { TaskResult } from '@/lib/gradebook/task-result';
import styles from '../gradebook.module.css';

/** The tasks of a turn with what each earned, and the way to where it is looked at. */
export async function TurnTasks({
  tasks,
  places,
  sittingId,
  mayReview,
}: {
  tasks: readonly TaskResult[];
  places: Awaited<ReturnType<typeof listTurnTasks>>;
  sittingId: string | null;
  mayReview: boolean;
}) {
  const t = await getTranslations('gradebook');
  const percent = (share: number) => t('ofHundred', { points: Math.round(share * 100) });
  return (
    <div className={styles.scroll}>
      <table className={styles.printed}>
        <thead>
          <tr>
            <th scope="col">{t('task')}</th>
            <th scope="col">{t('what')}</th>
            <th scope="col">{t('earned')}</th>
            {mayReview && (
              <th scope="col">
                <span className={ui.unseen}>{t('look')}</span>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {tasks.map(({ place, kind, share, computed, withdrawn }) => {
            const at = places.find((one) => one.place === place);
            const href = at?.attemptId
              ? `/review/attempts/${at.attemptId}`
              : at?.sittingPlace && sittingId
                ? `/review/sittings/${sittingId}?at=${at.sittingPlace}`
                : undefined;
            return (
              <tr key={place}>
                <td>{place}</td>
                <td>{t(`kinds.${kind}`)}</td>
                <td>
                  {share === null ? t('toMark') : percent(share)}
                  {computed !== null && share !== null && share !== computed && (
                    <span className={styles.state}> {t('changed', { points: percent(computed) })}</span>
                  )}
                  {withdrawn && <span className={styles.state}> {t('withdrawn')}</span>}
                </td>
                {mayReview && (
                  <td>
                    {href ? (
                      <Link href={href} prefetch={false}>
                        {t('look')}
                      </Link>
                    ) : (
                      t('notDone')
                    )}
                  </td>
                )}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
