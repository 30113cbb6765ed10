import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { AttemptView, CaseFace, ReadingItem, ReadingView } from '@/app/_server/attempt-view';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { Instrument } from '@/app/_ui/gauges/instrument';
import ui from '@/app/_ui/ui.module.css';
import styles from './case.module.css';
import { FindingForm } from './finding-form';
import { FindingText } from './findings';

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
      {view.state === 'open' && !item.finding && item.shown.kind !== 'destroyed' ? (
        <FindingForm
          key={`${reading.seq} ${item.quantity}`}
          attemptId={view.id}
          face={face}
          reading={reading}
          item={item}
          units={units}
          picture={<Picture item={item} />}
        />
      ) : (
        <div className={styles.bench}>
          <Picture item={item} />
          <Outcome face={face} item={item} units={units} />
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

function Picture({ item }: { item: ReadingItem }) {
  return (
    <div className={styles.picture}>
      {item.gauge && <Instrument gauge={item.gauge} shown={item.shown} label={item.label} />}
      {item.gauge?.display !== 'digital' && <p className={styles.caption}>{item.label}</p>}
    </div>
  );
}

/** What a reading that waits for no verdict came to. */
function Outcome({ face, item, units }: { face: CaseFace; item: ReadingItem; units: UnitChoice }) {
  const t = useTranslations('bench');
  const verdict = useTranslations('verdicts');
  if (item.shown.kind === 'destroyed')
    return (
      <div className={ui.alert} role="alert">
        <h3>{t('destroyedTitle')}</h3>
        <p>{t('destroyedBody')}</p>
      </div>
    );
  if (!item.finding) return null;
  return (
    <div className={ui.stack}>
      <h3>{t('doneTitle')}</h3>
      <FindingText finding={item.finding} rig={face.rig} units={units} vacuum={item.vacuum} />
      <p role="status">{t('done', { verdict: verdict(item.finding.verdict) })}</p>
    </div>
  );
}
