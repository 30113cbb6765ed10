import type { Outcome } from '@/app/_server/questions/marked-view';
import styles from './marked.module.css';

/** A tick, a disc that is half filled, a cross, an hourglass, a dash. */
const SHAPES: Record<Outcome['is'], string> = {
  right: 'M1 6l3.5 4L11 2',
  partly: 'M6 1.5a4.5 4.5 0 0 0 0 9zM6 1.5a4.5 4.5 0 0 1 0 9',
  wrong: 'M2 2l8 8M10 2l-8 8',
  waiting: 'M2.5 1.2h7M2.5 10.8h7M3.5 1.2c0 5 5 4.6 5 9.6M8.5 1.2c0 5-5 4.6-5 9.6',
  unanswered: 'M2 6h8',
};

/** How something stands, by shape; the word stands beside it. */
export function StandingShape({ is }: { is: Outcome['is'] }) {
  return (
    <svg className={styles.shape} viewBox="0 0 12 12" width="16" height="16" aria-hidden="true">
      <path d={SHAPES[is]} fill="none" stroke="currentColor" strokeWidth={is === 'waiting' ? 1.4 : 2} />
      {is === 'partly' && <path d="M6 1.5a4.5 4.5 0 0 0 0 9z" fill="currentColor" />}
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
