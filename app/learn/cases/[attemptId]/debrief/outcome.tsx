import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import ui from '@/app/_ui/ui.module.css';
import type { Grade } from '@/lib/grading/grade';
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
        {grade.score !== undefined && <Step score={grade.score} />}
        {grade.capped && <p className={styles.capped}>{t('capped')}</p>}
        {grade.hints !== undefined && grade.hints > 0 && (
          <p className={styles.hints}>{t('hintsUsed', { count: grade.hints })}</p>
        )}
      </div>
    </section>
  );
}

const HIGHEST = 4;

/** The ordered score: as many boxes filled as it says. */
function Step({ score }: { score: NonNullable<Grade['score']> }) {
  const t = useTranslations('debrief');
  return (
    <p className={styles.step}>
      <svg viewBox="0 0 84 16" width="84" height="16" aria-hidden="true">
        {Array.from({ length: HIGHEST }, (_, index) => index).map((index) => (
          <rect
            key={index}
            className={index < score ? styles.filled : styles.empty}
            x={index * 21 + 1}
            y="1"
            width="18"
            height="14"
          />
        ))}
      </svg>
      <span>{t('score', { score, words: t(`scoreWords.${score}`) })}</span>
    </p>
  );
}
