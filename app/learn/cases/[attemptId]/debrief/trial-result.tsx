import { useTranslations } from 'next-intl';
import type { ReadingItem } from '@/app/_server/attempt-view';
import type { DebriefView } from '@/app/_server/debrief-view';
import type { Trial, TriedVerdict } from '@/app/_server/try-check';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { Instrument } from '@/app/_ui/gauges/instrument';
import { showIn } from '@/app/_ui/show-quantity';
import ui from '@/app/_ui/ui.module.css';
import { VerdictMark } from '@/app/_ui/verdict-mark';
import { Harm } from '../harm';
import styles from './debrief.module.css';
import { useLineWords } from './line-words';
import { ShareTable } from './share-table';

/** What a skipped check would have shown, what that would have said, and what it would have done to the belief. */
export function TrialResult({ trial, view, units }: { trial: Trial; view: DebriefView; units: UnitChoice }) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  const { reading, verdicts, before, after } = trial;
  return (
    <div className={`${ui.stack} ${styles.trial}`}>
      <h3>
        {t('tried', {
          check: reading.check.name,
          condition: run(reading.condition),
          instrument: reading.instrument.name,
        })}
      </h3>
      <div className={styles.trialParts}>
        <div className={ui.stack}>
          {reading.items.map((item) => (
            <Tried
              key={item.quantity}
              item={item}
              trial={trial}
              verdict={verdicts.find(({ quantity }) => quantity === item.quantity)}
              view={view}
              units={units}
            />
          ))}
        </div>
        <ShareTable before={before} after={after} />
      </div>
    </div>
  );
}

function Tried({
  item,
  trial: { reading },
  verdict,
  view: { attempt },
  units,
}: {
  item: ReadingItem;
  trial: Trial;
  verdict: TriedVerdict | undefined;
  view: DebriefView;
  units: UnitChoice;
}) {
  const t = useTranslations('debrief');
  const lineWords = useLineWords(attempt.face?.rig, units);
  const { gauge, shown, label, grades, vacuum } = item;
  const value = shown.kind === 'value' && !grades ? showIn(shown.value, shown.unit, units, vacuum) : undefined;
  // It names its quantity and prints its value itself.
  const prints = gauge?.display === 'digital';
  return (
    <div className={styles.tried}>
      {gauge && (
        <div className={styles.triedPicture}>
          <Instrument gauge={gauge} shown={shown} label={label} units={units} grades={grades} lines={reading.lines} />
        </div>
      )}
      {!prints && <p>{value === undefined ? label : t('triedValue', { quantity: label, value })}</p>}
      <Harm shown={shown} cautions={reading.check.cautions} units={units} />
      {verdict?.verdict && (
        <p>
          <VerdictMark verdict={verdict.verdict} />{' '}
          {verdict.limit !== null && t('limitIs', { limit: lineWords(verdict.limit) })}
        </p>
      )}
      {verdict?.limit === null && <p className={ui.small}>{t('triedNoLine')}</p>}
    </div>
  );
}
