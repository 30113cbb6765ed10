import { getTranslations } from 'next-intl/server';
import type { TopicLine } from '@/app/_server/readiness/report-text';
import ui from '@/app/_ui/ui.module.css';
import { DecisionMark } from '../../decision-mark';
import styles from '../../readiness.module.css';

/** What the evidence says of each topic, drawn on one scale and in numbers. */
export async function TopicsTable({ topics }: { topics: readonly TopicLine[] }) {
  const t = await getTranslations('readiness.report');
  const columns = ['colDecision', 'colChance', 'colLine', 'colAbility', 'colResponses', 'colNewest'] as const;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="topics">
      <h2 id="topics">{t('topicsTitle')}</h2>
      <table className={styles.topics}>
        <caption>{t('topicsCaption')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('colTopic')}</th>
            {columns.map((column) => (
              <th key={column} scope="col">
                {t(column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {topics.map((line) => (
            <tr key={line.topic}>
              <th scope="row">
                {line.topic}
                <Scale line={line} />
              </th>
              <td data-label={t('colDecision')}>
                <DecisionMark decision={line.standing.decision} word={line.word} />
              </td>
              <td data-label={t('colChance')} className={ui.code}>
                {line.chance}{' '}
                <span className={ui.small}>
                  ({t('colAsked')} {line.asked})
                </span>
              </td>
              <td data-label={t('colLine')} className={ui.code}>
                {line.line}
              </td>
              <td data-label={t('colAbility')} className={ui.code}>
                {line.ability}
              </td>
              <td data-label={t('colResponses')}>{line.responses}</td>
              <td data-label={t('colNewest')}>{line.newest}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Logits from the middle of the scale to its ends. */
const REACH = 3;
const WIDTH = 220;

/** Where on the scale the ability lies, with the line. */
function Scale({ line: { standing, scale } }: { line: TopicLine }) {
  const [low, high] = standing.interval.map(placeOf) as [number, number];
  const cut = placeOf(standing.cut);
  const mean = placeOf(standing.mean);
  return (
    <svg className={styles.scale} viewBox={`0 0 ${WIDTH} 18`} role="img" aria-label={scale}>
      <path d={`M0 9H${WIDTH}M${WIDTH / 2} 6v6`} stroke="var(--line)" />
      {standing.responses > 0 && (
        <>
          <path d={`M${low} 9H${high}`} stroke="var(--ink)" strokeWidth="6" opacity="0.35" />
          <circle cx={mean} cy="9" r="4" fill="var(--ink)" />
        </>
      )}
      <path d={`M${cut} 1v16`} stroke="var(--accent)" strokeWidth="2.5" strokeDasharray="4 2" />
    </svg>
  );
}

function placeOf(ability: number): number {
  const held = Math.min(REACH, Math.max(-REACH, ability));
  return ((held + REACH) / (2 * REACH)) * WIDTH;
}
