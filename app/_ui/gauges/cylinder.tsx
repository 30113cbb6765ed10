import { useTranslations } from 'next-intl';
import type { Gauge } from '@/lib/gauges/gauge';
import styles from './gauges.module.css';
import { markPosition, type Scale, scaleMarks } from './mark-position';

const GLASS = { left: 34, right: 94, top: 24, bottom: 296 };
const CLOSE_UP = { left: 150, right: 236, top: 60, bottom: 260 };
const MARK_LENGTH = [26, 18, 12] as const;
const MARK_CLASS = [styles.numberedMark, styles.halfMark, styles.mark] as const;

/** A graduated glass after one minute, with a close-up of the level: small divisions cannot be told apart otherwise. */
export function Cylinder({ gauge, scale, level }: { gauge: Gauge; scale: Scale; level: number | 'overflowing' }) {
  const { min, max } = gauge.range;
  const value = level === 'overflowing' ? max : level;
  const from = Math.min(Math.max(min, value - scale.major), max - 2 * scale.major);
  const near = { min: from, max: from + 2 * scale.major };
  return (
    <svg
      className={styles.instrument}
      viewBox="0 0 260 310"
      role="img"
      aria-label={useCylinderText(gauge, scale, level)}
    >
      <Fuel box={GLASS} range={gauge.range} level={value} />
      <Marks box={GLASS} range={gauge.range} scale={{ major: scale.major, minor: scale.major / 2 }} />
      <path
        className={styles.glass}
        d={`M${GLASS.left - 8} 14L${GLASS.left} 24V296H${GLASS.right}V24L${GLASS.right + 6} 14`}
      />
      <path className={styles.near} d={connector(near, gauge.range)} />
      <Fuel box={CLOSE_UP} range={near} level={value} />
      <Marks box={CLOSE_UP} range={near} scale={scale} />
      <path
        className={styles.glass}
        d={`M${CLOSE_UP.left} ${CLOSE_UP.top}V${CLOSE_UP.bottom}M${CLOSE_UP.right} ${CLOSE_UP.top}V${CLOSE_UP.bottom}`}
      />
      <text className={styles.unit} x={(CLOSE_UP.left + CLOSE_UP.right) / 2} y="290">
        mL
      </text>
    </svg>
  );
}

type Box = typeof GLASS;
type Range = { min: number; max: number };

function height(value: number, { min, max }: Range, { top, bottom }: Box): number {
  return Number((bottom - ((bottom - top) * (value - min)) / (max - min)).toFixed(2));
}

function Fuel({ box, range, level }: { box: Box; range: Range; level: number }) {
  const y = height(level, range, box);
  return (
    <>
      <rect className={styles.fuel} x={box.left} y={y} width={box.right - box.left} height={box.bottom - y} />
      <path className={styles.level} d={`M${box.left} ${y}H${box.right}`} />
    </>
  );
}

function Marks({ box, range, scale }: { box: Box; range: Range; scale: Scale }) {
  return scaleMarks(scale, range).map(({ value, rank }) => {
    const y = height(value, range, box);
    return (
      <g key={value}>
        <path className={MARK_CLASS[rank]} d={`M${box.left} ${y}h${MARK_LENGTH[rank]}`} />
        {rank === 0 && (
          <text className={styles.number} x={box.right - 18} y={y - 3} style={{ fontSize: 12 }}>
            {value}
          </text>
        )}
      </g>
    );
  });
}

/** From the stretch of the glass that is shown close up to its close-up. */
function connector(near: Range, range: Range): string {
  const [high, low] = [height(near.max, range, GLASS), height(near.min, range, GLASS)];
  return `M${GLASS.right} ${high}L${CLOSE_UP.left} ${CLOSE_UP.top}M${GLASS.right} ${low}L${CLOSE_UP.left} ${CLOSE_UP.bottom}`;
}

function useCylinderText(gauge: Gauge, scale: Scale, level: number | 'overflowing'): string {
  const t = useTranslations('gauges');
  const about = t('cylinder', {
    name: gauge.text.en.name,
    numbers: String(scale.major),
    divisions: String(scale.minor),
  });
  if (level === 'overflowing') return `${about} ${t('overflowing')}`;
  const { number, divisions, half } = markPosition(level, scale, gauge.range.min);
  const place = divisions === 0 && !half ? 'on' : half ? 'halfPast' : 'past';
  return `${about} ${t(`fuelLevel.${place}`, { number: String(number), divisions })}`;
}
