import type { Decision } from '@/lib/competency/decision';
import styles from './readiness.module.css';

const SHAPES: Record<Decision, string> = {
  ready: 'M1 6l3.5 4L11 2',
  'not-yet': 'M2 6h8',
  'not-enough-evidence': 'M3 4a3 3 0 1 1 4 2.8Q6 7.2 6 8.4M6 10.4v.8',
};

/** A decision, by shape and word. */
export function DecisionMark({ decision, word, large = false }: { decision: Decision; word: string; large?: boolean }) {
  return (
    <span className={[styles.decision, styles[decision], large && styles.large].filter(Boolean).join(' ')}>
      <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
        <path d={SHAPES[decision]} fill="none" stroke="currentColor" strokeWidth="2" />
      </svg>
      {word}
    </span>
  );
}
