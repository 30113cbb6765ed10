import { useTranslations } from 'next-intl';
import type { HintView } from '@/app/_server/hint-views';
import ui from '@/app/_ui/ui.module.css';
import styles from './case.module.css';

/** The hints that were asked for, on the job card in small. */
export function Hints({ hints }: { hints: readonly HintView[] }) {
  const t = useTranslations('coach');
  const run = useTranslations('conditionsShort');
  if (hints.length === 0) return null;
  return (
    <>
      <h3 className={styles.waiting}>{t('hints')}</h3>
      <ul className={ui.small}>
        {hints.map(({ seq, next }) => (
          <li key={seq}>
            {next ? t('next', { check: next.check.name, condition: run(next.condition) }) : t('hintNothing')}
          </li>
        ))}
      </ul>
    </>
  );
}
