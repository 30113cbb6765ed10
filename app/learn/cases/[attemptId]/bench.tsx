import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { AttemptView, CaseFace, ReadingItem, ReadingView } from '@/app/_server/attempt-view';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { Instrument } from '@/app/_ui/gauges/instrument';
import ui from '@/app/_ui/ui.module.css';
import styles from './case.module.css';
import { FindingForm } from './finding-form';
import { FindingText } from './findings';
import { Harm } from './harm';
import { isHarm, isRecording, isWide } from './reading-kind';

/** The instrument with what it shows, and beside it the verdict to be given. */
export function Bench({
  view,
  face,
  reading,
  item,
  units,
}: {
  view: AttemptView;
  face: CaseFace;
  reading: ReadingView;
  item: ReadingItem;
  units: UnitChoice;
}) {
  const t = useTranslations('bench');
  const run = useTranslations('conditionsShort');
  return (
    <section className={ui.panel} aria-labelledby="bench">
      <div className={ui.head}>
        <h2 id="bench" tabIndex={-1}>
          {t('title')}
        </h2>
        <span className={ui.small}>
          {t('context', {
            check: reading.check.name,
            condition: run(reading.condition),
            instrument: reading.instrument.name,
          })}
        </span>
      </div>
      {reading.check.severalQuantities && <Quantities view={view} reading={reading} item={item} />}
      {view.state === 'open' && !item.finding && !isHarm(item.shown) ? (
        <FindingForm
          key={`${reading.seq} ${item.quantity}`}
          attemptId={view.id}
          face={face}
          reading={reading}
          item={item}
          units={units}
          picture={<Picture reading={reading} item={item} units={units} />}
        />
      ) : (
        <div className={`${styles.bench} ${isWide(item) ? styles.wide : ''}`}>
          <Picture reading={reading} item={item} units={units} />
          <Outcome face={face} reading={reading} item={item} units={units} />
        </div>
      )}
    </section>
  );
}

/** The quantities of a reading that has several, each judged by itself. */
function Quantities({ view, reading, item }: { view: AttemptView; reading: ReadingView; item: ReadingItem }) {
  const t = useTranslations('bench');
  return (
    <ul className={styles.quantities} aria-label={t('items')}>
      {reading.items.map(({ quantity, label, finding }) => (
        <li key={quantity}>
          <Link
            className={styles.quantity}
            href={`/learn/cases/${view.id}?${new URLSearchParams({ reading: String(reading.seq), quantity })}`}
            scroll={false}
            prefetch={false}
            aria-current={quantity === item.quantity ? 'true' : undefined}
          >
            <span>{label}</span>
            <span className={styles.cost}>{finding ? t('judged') : t('open')}</span>
          </Link>
        </li>
      ))}
    </ul>
  );
}

function Picture({ reading, item, units }: { reading: ReadingView; item: ReadingItem; units: UnitChoice }) {
  const { gauge, shown, label, grades } = item;
  return (
    <div className={styles.picture}>
      {gauge && (
        <Instrument gauge={gauge} shown={shown} label={label} units={units} grades={grades} lines={reading.lines} />
      )}
      <Caption item={item} />
    </div>
  );
}

/** Names the quantity, where the instrument does not. */
function Caption({ item }: { item: ReadingItem }) {
  const t = useTranslations('bench');
  const { gauge, label, grades } = item;
  if (isRecording(item)) return <p className={styles.readOff}>{t.rich('readOff', { what: () => <b>{label}</b> })}</p>;
  const printed = gauge?.display === 'digital' || (gauge?.display === 'eye' && !grades);
  return printed ? null : <p className={styles.caption}>{label}</p>;
}

/** What a reading that waits for no verdict came to. */
function Outcome({
  face,
  reading,
  item,
  units,
}: {
  face: CaseFace;
  reading: ReadingView;
  item: ReadingItem;
  units: UnitChoice;
}) {
  const t = useTranslations('bench');
  const verdict = useTranslations('verdicts');
  if (isHarm(item.shown)) return <Harm shown={item.shown} cautions={reading.check.cautions} units={units} />;
  if (!item.finding) return null;
  return (
    <div className={ui.stack}>
      <h3>{t('doneTitle')}</h3>
      <FindingText finding={item.finding} item={item} rig={face.rig} units={units} />
      <p role="status">{t('done', { verdict: verdict(item.finding.verdict) })}</p>
    </div>
  );
}
