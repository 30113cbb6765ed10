import { getTranslations } from 'next-intl/server';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import type { Panel } from '@/db/queries/panels';
import { movePanelOn } from '../actions';

/** For who runs it: who has rated everything, not what; and the way on. */
export async function Running({
  panel,
  judges,
  finished,
}: {
  panel: Panel;
  judges: readonly { judgeId: string; name: string | null }[];
  finished: readonly string[];
}) {
  const t = await getTranslations('panels');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="running">
      <h2 id="running">{t('runningTitle')}</h2>
      <ul>
        {judges.map(({ judgeId, name }) => (
          <li key={judgeId}>
            {t(finished.includes(judgeId) ? 'hasRated' : 'hasNotRated', { name: name ?? t('gone') })}
          </li>
        ))}
      </ul>
      <ActForm
        className={ui.stack}
        action={movePanelOn}
        submit={t(panel.state === 'first-round' ? 'toSecond' : 'close')}
        failed={problems('no-answer')}
        quiet
      >
        <input type="hidden" name="panelId" value={panel.id} />
        <input type="hidden" name="from" value={panel.state} />
        <p className={ui.small}>{t('moveRule')}</p>
      </ActForm>
    </section>
  );
}
