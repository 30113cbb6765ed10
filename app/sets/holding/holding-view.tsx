import { useTranslations } from 'next-intl';
import { catalogue } from '@/app/_server/catalogue';
import ui from '@/app/_ui/ui.module.css';
import type { Gap, Holding, TopicRow } from '@/lib/sets/hold-against';
import styles from '../sets.module.css';

type Words = ReturnType<typeof useTranslations<'sets.holding'>>;

/** What a set is made of, and where that is not what its blueprint asks for. */
export function HoldingView({ holding }: { holding: Holding }) {
  const t = useTranslations('sets.holding');
  const { rows, gaps } = holding;
  if (rows.length === 0) return <p className={ui.small}>{t('none')}</p>;
  const isHeld = rows.some(({ asked }) => asked);
  return (
    <div className={ui.stack}>
      <table className={styles.holding}>
        <caption>{t('caption')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('topic')}</th>
            <th scope="col">{t('tasks')}</th>
            {isHeld && <th scope="col">{t('asked')}</th>}
            <th scope="col">{t('minutes')}</th>
            <th scope="col">{t('difficulty')}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row key={row.topic ?? ''} row={row} isHeld={isHeld} isOff={gaps.some((gap) => isAt(gap, row))} t={t} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{t('whole')}</th>
            <td>{tasksText(holding.tasks)}</td>
            {isHeld && <td />}
            <td>{Math.round(holding.minutes)}</td>
            <td>{logits(holding.difficulty)}</td>
          </tr>
        </tfoot>
      </table>
      {gaps.length > 0 && (
        <div className={ui.notice}>
          <h3>{t('gaps')}</h3>
          <ul>
            {gaps.map((gap) => (
              <li key={JSON.stringify(gap)}>{gapText(gap, t)}</li>
            ))}
          </ul>
        </div>
      )}
      {isHeld && gaps.length === 0 && <p>{t('noGaps')}</p>}
    </div>
  );
}

function Row({ row, isHeld, isOff, t }: { row: TopicRow; isHeld: boolean; isOff: boolean; t: Words }) {
  const { topic, tasks, minutes, difficulty, asked } = row;
  return (
    <tr>
      <th scope="row">
        {isOff && <span className={styles.off}>▲ </span>}
        {topic === undefined ? t('any') : topicName(topic)}
      </th>
      <td>{tasksText(tasks)}</td>
      {isHeld && <td>{asked ? rangeText(asked) : '–'}</td>}
      <td>{tasks > 0 ? Math.round(minutes) : '–'}</td>
      <td>{logits(difficulty)}</td>
    </tr>
  );
}

function isAt(gap: Gap, { topic }: TopicRow): boolean {
  return 'topic' in gap && gap.topic === topic;
}

function gapText(gap: Gap, t: Words): string {
  switch (gap.gap) {
    case 'not-asked':
      return t('gap.not-asked', { topic: topicName(gap.topic), tasks: tasksText(gap.tasks) });
    case 'too-few':
    case 'too-many':
      return t(`gap.${gap.gap}`, { topic: topicName(gap.topic), tasks: tasksText(gap.tasks), asked: endOf(gap) });
    case 'too-short':
    case 'too-long':
      return t(`gap.${gap.gap}`, { minutes: Math.round(gap.minutes), asked: endOf(gap) });
    case 'too-easy':
    case 'too-hard':
      return t(`gap.${gap.gap}`, { difficulty: logits(gap.difficulty), asked: logits(endOf(gap)) });
  }
}

/** The end of a range that a set lies beyond. */
function endOf({ gap, asked }: Exclude<Gap, { gap: 'not-asked' }>): number {
  const isBelow = gap === 'too-few' || gap === 'too-short' || gap === 'too-easy';
  return asked[isBelow ? 0 : 1];
}

function topicName(id: string): string {
  return catalogue().topics.get(id)?.text.en.name ?? id;
}

function tasksText(tasks: number): string {
  return String(Math.round(tasks * 10) / 10);
}

function rangeText([from, to]: readonly [number, number]): string {
  return from === to ? String(from) : `${from}–${to}`;
}

function logits(value: number | undefined): string {
  if (value === undefined) return '–';
  return value.toFixed(1).replace('-', '−');
}
