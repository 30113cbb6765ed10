import { useTranslations } from 'next-intl';
import type { DebriefView, TruthView } from '@/app/_server/debrief-view';
import ui from '@/app/_ui/ui.module.css';
import styles from './debrief.module.css';

/** What was really wrong, and what mends it. */
export function Truth({ view: { truths } }: { view: Pick<DebriefView, 'truths'> }) {
  const t = useTranslations('debrief');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="truth">
      <h2 id="truth">{t('truth')}</h2>
      {truths.map((truth) => (
        <OneTruth key={truth.cause} truth={truth} />
      ))}
    </section>
  );
}

function OneTruth({ truth: { name, how, severity, repairs } }: { truth: TruthView }) {
  const t = useTranslations('debrief');
  return (
    <div className={ui.stack}>
      <p>
        <strong>{name}.</strong> {how}
      </p>
      {severity > 0 && <p>{t('severity', { percent: Math.round(severity * 100) })}</p>}
      {repairs.length > 0 && (
        <div>
          <h3>{t('rightRepairs')}</h3>
          <ul>
            {repairs.map((repair) => (
              <li key={repair.id}>
                {repair.name}
                <span className={styles.under}>
                  {[
                    t('repairMinutes', { minutes: repair.minutes }),
                    repair.parts.length > 0 ? t('repairParts', { parts: repair.parts.join(', ') }) : t('repairNoParts'),
                  ].join(', ')}
                </span>
              </li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}
