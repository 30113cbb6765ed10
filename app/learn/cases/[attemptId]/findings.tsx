import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { AttemptView, FindingView, ReadingItem, ReadingView } from '@/app/_server/attempt-view';
import { catalogue } from '@/app/_server/catalogue';
import { limitFacts } from '@/app/_server/limit-facts';
import { AreaChips } from '@/app/_ui/area-chips';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { ItemValue } from '@/app/_ui/item-value';
import { limitWords } from '@/app/_ui/limit-words';
import ui from '@/app/_ui/ui.module.css';
import { VerdictMark } from '@/app/_ui/verdict-mark';
import type { Rig } from '@/lib/rig/rig';
import styles from './case.module.css';
import { Hints } from './hints';

/** The job card: what was read and judged, and what was read and still waits for a verdict. */
export function Findings({ view, units }: { view: AttemptView; units: UnitChoice }) {
  const t = useTranslations('findings');
  const lines = view.readings.flatMap((reading) => reading.items.map((item) => ({ reading, item })));
  const judged = lines
    .filter(({ item }) => item.finding)
    .sort((a, b) => (a.item.finding?.seq ?? 0) - (b.item.finding?.seq ?? 0));
  const waiting = lines.filter(({ item }) => !item.finding);
  return (
    <section className={ui.panel} aria-labelledby="findings">
      <div className={ui.head}>
        <h2 id="findings">{t('title')}</h2>
        <span className={ui.small}>{judged.length}</span>
      </div>
      {judged.length === 0 && <p className={ui.small}>{t('none')}</p>}
      <ol>
        {judged.map(({ reading, item }) => (
          <li key={`${reading.seq} ${item.quantity}`} className={styles.finding}>
            <Line reading={reading} item={item} units={units} />
            {item.finding && <FindingText finding={item.finding} item={item} rig={view.face?.rig} units={units} />}
          </li>
        ))}
      </ol>
      {waiting.length > 0 && <Waiting view={view} waiting={waiting} units={units} />}
      <Hints hints={view.hints} />
    </section>
  );
}

function Waiting({
  view,
  waiting,
  units,
}: {
  view: AttemptView;
  waiting: { reading: ReadingView; item: ReadingItem }[];
  units: UnitChoice;
}) {
  const t = useTranslations('findings');
  return (
    <>
      <h3 className={styles.waiting}>{t('unjudged')}</h3>
      <ul>
        {waiting.map(({ reading, item }) => (
          <li key={`${reading.seq} ${item.quantity}`} className={styles.waitingLine}>
            {view.face ? (
              <Link
                className={styles.judge}
                href={`/learn/cases/${view.id}?${new URLSearchParams({ reading: String(reading.seq), quantity: item.quantity })}`}
                scroll={false}
                prefetch={false}
              >
                <Line reading={reading} item={item} units={units} />
              </Link>
            ) : (
              <Line reading={reading} item={item} units={units} />
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

function Line({ reading, item, units }: { reading: ReadingView; item: ReadingItem; units: UnitChoice }) {
  const run = useTranslations('conditionsShort');
  return (
    <span className={styles.line}>
      <b>{`${reading.check.severalQuantities ? item.label : reading.check.name}, ${run(reading.condition)}`}</b>
      <span className={styles.value}>
        <ItemValue item={item} units={units} />
      </span>
    </span>
  );
}

/** Verdict, why, and the areas it clears and keeps, as one reads them on a job card. */
export function FindingText({
  finding,
  item,
  rig,
  units,
}: {
  finding: FindingView;
  item: ReadingItem;
  rig: Rig | undefined;
  units: UnitChoice;
}) {
  const t = useTranslations('findings');
  const say = useTranslations('limits');
  const line = rig?.limits.find(({ id }) => id === finding.limit);
  const limit = line ? limitWords(say, line, units, limitFacts(catalogue(), line)) : (finding.limit ?? say('none'));
  return (
    <div className={styles.findingText}>
      <p>
        <VerdictMark verdict={finding.verdict} />{' '}
        <span className={ui.small}>
          {t(`${item.grades ? 'becauseGrade' : 'because'}.${finding.comparison}`, { limit })}
        </span>
      </p>
      <AreaChips clears={finding.clears} suspects={finding.suspects} />
      {finding.words !== '' && <p className={styles.words}>{finding.words}</p>}
    </div>
  );
}
