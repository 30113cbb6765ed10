import { useTranslations } from 'next-intl';
import type { Verdict } from '@/lib/checks/verdict';
import styles from './marks.module.css';

const SHAPES: Record<Verdict, string> = {
  pass: 'M1 6l3.5 4L11 2',
  fail: 'M2 2l8 8M10 2l-8 8',
  'cannot-tell': 'M3 4a3 3 0 1 1 4 2.8Q6 7.2 6 8.4M6 10.4v.8',
};

/** A verdict, by shape and word. */
export function VerdictMark({ verdict }: { verdict: Verdict }) {
  const t = useTranslations('verdicts');
  return (
    <span className={styles.verdict}>
      <VerdictShape verdict={verdict} />
      {t(verdict)}
    </span>
  );
}

export function VerdictShape({ verdict }: { verdict: Verdict }) {
  return (
    <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      <path d={SHAPES[verdict]} fill="none" stroke="currentColor" strokeWidth="2" />
    </svg>
  );
}
