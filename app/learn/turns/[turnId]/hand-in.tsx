import { useTranslations } from 'next-intl';
import type { TurnView } from '@/app/_server/turns/read-turn';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import { handInTurn } from './actions';

/** What is not done, and the end of the turn. */
export function HandIn({ view: { tasks, turn } }: { view: TurnView }) {
  const t = useTranslations('turns');
  const problems = useTranslations('problems');
  const undone = tasks.filter(({ state }) => state === 'not-opened' || state === 'opened' || state === 'unanswered');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="hand-in">
      <h2 id="hand-in">{t('handInTitle')}</h2>
      <p>
        {undone.length === 0
          ? t('allDone')
          : t('undone', { count: undone.length, places: undone.map(({ place }) => place).join(', ') })}
      </p>
      <p>{t('handInSure')}</p>
      <ActForm action={handInTurn} submit={t('handIn')} failed={problems('answer-failed')} quiet>
        <input type="hidden" name="turnId" value={turn.id} />
      </ActForm>
    </section>
  );
}
