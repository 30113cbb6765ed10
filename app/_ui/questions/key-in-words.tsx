import { useTranslations } from 'next-intl';
import type { MarkedAnswer, Standing } from '@/app/_server/questions/marked-view';
import styles from './marked.module.css';
import { keyNumber } from './number-words';
import { StretchWords } from './placed-fields';
import { InLine } from './words';

/** The key in a line, for whoever reads no further; longer keys stand below in full. */
export function KeyInWords({ answer }: { answer: MarkedAnswer }) {
  const t = useTranslations('questions.marked');
  const keys = keysOf(answer);
  if (keys.length === 0) return null;
  return (
    <p className={styles.key}>
      <span className={styles.label}>{t('key')}</span>
      {keys.map(({ id, words }) => (
        <span key={id} className={styles.named}>
          {words}
        </span>
      ))}
    </p>
  );
}

function keysOf(answer: MarkedAnswer): { id: string; words: React.ReactNode }[] {
  switch (answer.form) {
    case 'choice':
      return answer.options.filter(isRight).map(({ id, said }) => ({ id, words: <InLine said={said} /> }));
    case 'numbers': {
      const [only, ...others] = answer.parts;
      if (!only || others.length > 0) return [];
      return [{ id: only.id, words: keyNumber(only.key, only.units[0]).value }];
    }
    case 'point':
      return answer.targets.filter(isRight).map(({ id, name }) => ({ id, words: name }));
    case 'stretch':
      return answer.stretches.filter(isRight).map((one) => ({ id: one.id, words: <StretchWords stretch={one} /> }));
    case 'spot':
      return answer.shapes.filter(isRight).map(({ id, said }) => ({ id, words: <InLine said={said} /> }));
    default:
      return [];
  }
}

function isRight({ isRight: right }: Standing): boolean {
  return right;
}
