import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import ui from '@/app/_ui/ui.module.css';
import styles from './debrief.module.css';
import { outcomeKind } from './outcome-kind';

/** The score and the result in one sentence. */
export function Outcome({ view: { grade, truths, called, answers } }: { view: DebriefView }) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  const causes = truths.map(({ cause }) => cause);
  const kind = outcomeKind(causes, called, grade.callCorrect.area);
  return (
    <section className={`${ui.panel} ${ui.ticket} ${styles.outcome}`} aria-labelledby="outcome">
      <p className={styles.score}>
        {grade.total}
        <span className={ui.unseen}>{` ${t('outOf')}`}</span>
      </p>
      <div>
        <h1 id="outcome">{t(`outcome.${kind}`, { cause: truths[0]?.name ?? '', second: truths[1]?.name ?? '' })}</h1>
        {answers.map(({ cause, repair, proof }, index) => (
          <p key={cause} className={ui.small}>
            {t(index === 0 ? 'yourCall' : 'yourSecond', {
              cause,
              repair,
              proof: `${proof.name}, ${run(proof.condition)}`,
            })}
          </p>
        ))}
        {grade.capped && <p className={styles.capped}>{t('capped')}</p>}
      </div>
    </section>
  );
}
