import { useTranslations } from 'next-intl';
import styles from './gauges.module.css';

const HOSE = { left: 8, width: 288, height: 44 };
/** Shares of the hose that the comparison strips show, in percent. */
const STRIPS = [1, 5, 20] as const;
/** Steps of a sequence that fills a plane evenly: 1/p and 1/p² for the plastic number p, the real root of p³ = p + 1. */
const STEP = { along: 0.7548776662466927, across: 0.5698402909980532 };

/** A clear hose in the line: bubbles cover as much of the picture as gas fills of the fuel. To be judged by eye. */
export function ClearHose({ percent }: { percent: number }) {
  const t = useTranslations('gauges');
  return (
    <svg className={styles.instrument} viewBox="0 0 304 262" role="img" aria-label={t(`hose.${lookOf(percent)}`)}>
      <Hose y={14} percent={percent} />
      <text x={HOSE.left} y={92} style={{ fontSize: 13, fill: 'var(--ink-2)' }}>
        {t('compare')}
      </text>
      {STRIPS.map((strip, i) => (
        <g key={strip}>
          <Hose y={104 + i * 52} percent={strip} width={220} />
          <text x={240} y={131 + i * 52} style={{ fontSize: 14 }}>
            {`${strip} %`}
          </text>
        </g>
      ))}
    </svg>
  );
}

function Hose({ y, percent, width = HOSE.width }: { y: number; percent: number; width?: number }) {
  return (
    <g>
      <rect className={styles.fuel} x={HOSE.left} y={y} width={width} height={HOSE.height} />
      {bubbles(percent / 100, width).map(([x, dy, r], i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the bubbles are drawn once and never reordered
        <circle key={i} className={styles.bubble} cx={HOSE.left + x} cy={y + dy} r={r} />
      ))}
      <path className={styles.glass} d={`M${HOSE.left} ${y}h${width}m0 ${HOSE.height}h-${width}`} />
    </g>
  );
}

/** Bubbles whose areas add up to the share, spread by a sequence that leaves no gaps and has no chance in it. */
function bubbles(share: number, width: number): [x: number, y: number, radius: number][] {
  const placed: [number, number, number][] = [];
  let left = share * width * HOSE.height;
  for (let i = 1; left > 1; i++) {
    const radius = Math.min(2.5 + ((i * 7) % 5), Math.sqrt(left / Math.PI));
    const room = HOSE.height - 2 * radius - 2;
    placed.push([
      round(radius + ((i * STEP.along) % 1) * (width - 2 * radius)),
      round(radius + 1 + ((i * STEP.across) % 1) * room),
      round(radius),
    ]);
    left -= Math.PI * radius ** 2;
  }
  return placed;
}

function round(value: number): number {
  return Number(value.toFixed(2));
}

/** What an eye would say, for those who cannot see the picture. */
function lookOf(percent: number): 'clear' | 'few' | 'stream' | 'many' | 'foam' {
  if (percent === 0) return 'clear';
  if (percent <= 2) return 'few';
  if (percent <= 8) return 'stream';
  return percent <= 25 ? 'many' : 'foam';
}
