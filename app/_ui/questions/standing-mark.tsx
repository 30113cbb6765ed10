import type { Outcome } from '@/app/_server/questions/marked-view';
import styles from './marked.module.css';

/** A tick, half a tick, a cross, an hourglass, a dash. */
const SHAPES: Record<Outcome['is'], string> = {
  right: 'M1 6l3.5 4L11 2',
  partly: 'M1.5 7l3 3.5L7.5 6M9 3.5h2.5',
  wrong: 'M2 2l8 8M10 2l-8 8',
  waiting: 'M3 1.5h6M3 10.5h6M3.5 1.5c0 3 5 3 5 9M8.5 1.5c0 3-5 3-5 9',
  unanswered: 'M2 6h8',
};

/** How something stands, by shape; the word stands beside it. */
export function StandingShape({ is }: { is: Outcome['is'] }) {
  return (
    <svg className={styles.shape} viewBox="0 0 12 12" width="16" height="16" aria-hidden="true">
      <path d={SHAPES[is]} fill="none" stroke="currentColor" strokeWidth="2" />
    </svg>
  );
}

/** A mark on an option, a row, a number: shape and word. */
export function StandingMark({
  is,
  children,
}: {
  is: 'right' | 'partly' | 'wrong' | 'unanswered';
  children: React.ReactNode;
}) {
  return (
    <span className={`${styles.mark} ${is === 'right' ? styles.isRight : ''}`}>
      <StandingShape is={is} />
      {children}
    </span>
  );
}
