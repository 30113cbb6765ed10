import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import ui from '@/app/_ui/ui.module.css';
import styles from './debrief.module.css';

/** The score and the result in one sentence. */
export function Outcome({ view }: { view: DebriefView }) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  const { grade, call, truth } = view;
  const { cause, area } = grade.callCorrect;
  return (
    <section className={`${ui.panel} ${ui.ticket} ${styles.outcome}`} aria-labelledby="outcome">
      <p className={styles.score}>
        {grade.total}
        <span className={ui.unseen}>{` ${t('outOf')}`}</span>
      </p>
      <div>
        <h1 id="outcome">{t(`outcome.${cause ? 'right' : area ? 'area' : 'wrong'}`, { cause: truth.name })}</h1>
        <p className={ui.small}>
          {t('yourCall', {
            cause: call.cause,
            repair: call.repair,
            proof: `${call.proof.name}, ${run(call.proof.condition)}`,
          })}
        </p>
        {grade.capped && <p className={styles.capped}>{t('capped')}</p>}
      </div>
    </section>
  );
}
