import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import styles from '../../review.module.css';

/** The call, beside what there was. */
export function Called({ view: { answers, truths } }: { view: DebriefView }) {
  const t = useTranslations('review');
  const run = useTranslations('conditionsShort');
  return (
    <>
      <h3>{t('call')}</h3>
      <div className={styles.beside}>
        <div>
          <h4>{t('said')}</h4>
          {answers.map(({ cause, repair, proof }) => (
            <p key={cause}>{t('answer', { cause, repair, proof: `${proof.name}, ${run(proof.condition)}` })}</p>
          ))}
        </div>
        <div>
          <h4>{t('truth')}</h4>
          {truths.map(({ cause, name, how }) => (
            <p key={cause}>
              <b>{name}</b> {how}
            </p>
          ))}
        </div>
      </div>
    </>
  );
}
