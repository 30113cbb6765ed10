import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { workOf } from '@/app/_server/evidence/work-of';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import type { AgedResponse, TopicProgress } from '@/lib/competency/progress';
import { percent } from './numbers';
import styles from './progress.module.css';
import type { Reader } from './progress-view';

/** As many as one looks back over. */
const LISTED = 30;

interface Rests {
  name: string;
  shown: TopicProgress;
  settings: OrganizationSettings;
  by: Reader;
}

/** What a bar rests on, response by response, the newest first. */
export function EvidenceList({ name, shown: { shown }, settings, by }: Rests) {
  const t = useTranslations('progress');
  return (
    <details className={styles.evidence}>
      <summary>
        {t('evidenceTitle')}
        <span className={ui.unseen}>: {name}</span>
      </summary>
      {shown.length > LISTED && <p className={ui.small}>{t('latest', { count: LISTED })}</p>}
      <table className={styles.list}>
        <thead>
          <tr>
            {(['colWhen', 'colWhat', 'colScore', 'colHints', 'colCounts'] as const).map((column) => (
              <th key={column} scope="col">
                {t(column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.slice(0, LISTED).map((one) => (
            <Row key={one.work} one={one} settings={settings} by={by} />
          ))}
        </tbody>
      </table>
    </details>
  );
}

function Row({ one, settings, by }: { one: AgedResponse; settings: OrganizationSettings; by: Reader }) {
  const t = useTranslations('progress');
  const { at, score, model, hints, safetyEvents } = one;
  return (
    <tr>
      <th scope="row" data-label={t('colWhen')}>
        {shownDate(new Date(at), settings)}
      </th>
      <td data-label={t('colWhat')}>
        <What one={one} by={by} />
        {safetyEvents > 0 && <strong className={styles.under}>{t('events', { count: safetyEvents })}</strong>}
      </td>
      <td data-label={t('colScore')}>
        {t('score', { score, most: model.kind === 'choice' ? 1 : model.steps.length })}
      </td>
      <td data-label={t('colHints')}>{hints}</td>
      <td data-label={t('colCounts')}>
        <Counts one={one} />
      </td>
    </tr>
  );
}

const reasons = ['every-case', 'cause', 'wrong-call', 'measured', 'passed-over', 'answered', 'observed'] as const;

/** What was answered, with the way to it, and why it tells of the topic. */
function What({ one: { source, purpose, work, detail }, by }: { one: AgedResponse; by: Reader }) {
  const t = useTranslations('progress');
  const words = `${t(`source.${source}`)}, ${t(`purpose.${purpose}`)}`;
  const href = addressOf(work, by);
  const because = reasons.find((reason) => reason === detail.because);
  const { findings } = detail;
  return (
    <>
      {href ? (
        <Link href={href} prefetch={false}>
          {words}
        </Link>
      ) : (
        words
      )}
      <span className={styles.under}>
        {because && t(`because.${because}`)}
        {findings.length > 0 && `, ${t('findingNumber', { count: findings.length, list: findings.join(', ') })}`}
      </span>
    </>
  );
}

/** How much it counts today, and why not in full. */
function Counts({ one: { weight, counting, earlier, hints } }: { one: AgedResponse }) {
  const t = useTranslations('progress');
  if (earlier > 0) return t('countsNot');
  if (percent(counting) === 100) return t('countsFull');
  const aged = percent(counting) < percent(weight);
  const why = hints > 0 ? (aged ? 'both' : 'hints') : 'age';
  return t('countsLess', { percent: percent(counting), why: t(`why.${why}`) });
}

/** Where the work may be looked at; undefined where there is no page of it. */
function addressOf(work: string, by: Reader): string | undefined {
  const { kind, id, place } = workOf(work);
  if (kind === 'attempt') return by === 'learner' ? `/learn/cases/${id}/debrief#graded` : `/review/attempts/${id}`;
  if (kind === 'sitting') return by === 'learner' ? `/learn/sittings/${id}?at=${place}` : `/review/sittings/${id}`;
  return undefined;
}
