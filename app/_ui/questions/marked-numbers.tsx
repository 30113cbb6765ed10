import { useTranslations } from 'next-intl';
import type { MarkedPart } from '@/app/_server/questions/marked-view';
import { fromSi, toSi } from '@/lib/units';
import { showNumber, withUnit } from '../show-quantity';
import styles from './marked.module.css';
import { givenNumber, keyNumber } from './number-words';
import { StandingMark } from './standing-mark';
import { InLine } from './words';

const STANDING = { right: 'right', follows: 'partly', wrong: 'wrong' } as const;

/** Each number with what came of it and its key. */
export function MarkedNumbers({ parts }: { parts: readonly MarkedPart[] }) {
  const t = useTranslations('questions.marked');
  return (
    <ul className={styles.rows}>
      {parts.map((part) => (
        <li key={part.id} className={styles.told}>
          <span className={styles.numbers}>
            <b>
              <InLine said={part.said} />
            </b>
            <span className={styles.line}>
              <span className={styles.label}>{t('yours')}</span>
              <Given part={part} />
            </span>
            <span className={styles.line}>
              <span className={styles.label}>{t('key')}</span>
              <Key part={part} />
            </span>
          </span>
          <StandingMark is={part.given ? STANDING[part.outcome] : 'unanswered'}>
            {part.given ? t(`number.${part.outcome}`) : t('none')}
          </StandingMark>
        </li>
      ))}
    </ul>
  );
}

function Key({ part: { key, units } }: { part: MarkedPart }) {
  const t = useTranslations('questions.marked');
  const { value, tolerance } = keyNumber(key, units[0]);
  return (
    <span>
      <span className={styles.value}>{value}</span>
      {`; ${t('tolerance', { tolerance })}`}
    </span>
  );
}

/** As it was given, and in the key's unit where that is another one. */
function Given({ part: { given, units } }: { part: MarkedPart }) {
  const t = useTranslations('questions.marked');
  if (!given) return t('none');
  const [unit] = units;
  const other = given.unit !== undefined && unit !== undefined && given.unit !== unit;
  return (
    <span className={styles.value}>
      {givenNumber(given)}
      {other && ` = ${withUnit(showNumber(fromSi(toSi(given.value, given.unit ?? unit), unit)), unit)}`}
    </span>
  );
}
