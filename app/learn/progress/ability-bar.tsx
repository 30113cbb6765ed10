import type { AbilityRange } from '@/lib/competency/progress';
import styles from './progress.module.css';

/** Logits from the middle of the scale to its ends. */
const REACH = 3;
const WIDTH = 600;
const HEIGHT = 40;
const MIDDLE = 14;

interface Bar {
  range: AbilityRange;
  /** Drawn thin beneath, where age took from it. */
  before: AbilityRange | null;
  cut: number | undefined;
  label: string;
}

/** Where on the scale an ability lies, with the line that counts as competent. */
export function AbilityBar({ range, before, cut, label }: Bar) {
  const ticks = Array.from({ length: 2 * REACH + 1 }, (_, index) => index - REACH);
  return (
    <svg className={styles.bar} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
      <path d={`M8 ${MIDDLE}H${WIDTH - 8}`} stroke="var(--line)" />
      {ticks.map((at) => (
        <g key={at}>
          <path d={`M${place(at)} ${MIDDLE - 4}v8`} stroke="var(--line)" />
          <text x={place(at)} y={HEIGHT - 3} textAnchor="middle" className={styles.tick}>
            {at > 0 ? `+${at}` : String(at).replace('-', '−')}
          </text>
        </g>
      ))}
      {before && (
        <path
          d={`M${place(before.low)} ${MIDDLE + 9}H${place(before.high)}`}
          stroke="var(--ink-2)"
          strokeWidth="2"
          strokeDasharray="2 4"
        />
      )}
      <rect
        x={place(range.low)}
        y={MIDDLE - 5}
        width={Math.max(2, place(range.high) - place(range.low))}
        height="10"
        fill="var(--accent-soft)"
        stroke="var(--accent)"
        strokeWidth="1.5"
      />
      <circle cx={place(range.mean)} cy={MIDDLE} r="5" fill="var(--ink)" />
      {cut !== undefined && (
        <path d={`M${place(cut)} 0V${MIDDLE + 12}`} stroke="var(--ink)" strokeWidth="2.5" strokeDasharray="5 3" />
      )}
    </svg>
  );
}

function place(ability: number): number {
  const held = Math.min(REACH, Math.max(-REACH, ability));
  return 12 + ((held + REACH) / (2 * REACH)) * (WIDTH - 24);
}
