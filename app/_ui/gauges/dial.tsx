import { useTranslations } from 'next-intl';
import type { Gauge } from '@/lib/gauges/gauge';
import styles from './gauges.module.css';
import { markPosition, type Scale, scaleMarks } from './mark-position';

const CENTRE = { x: 130, y: 130 };
const RIM = 118;
const MARKS = 90;
const NUMBERS = 103;
const MARK_LENGTH = [16, 12, 8] as const;
const MARK_CLASS = [styles.numberedMark, styles.halfMark, styles.mark] as const;
/** The scale runs clockwise from lower left over 270°. */
const START = 135;
const SWEEP = 270;
/** How far past the last mark the pointer's stop stands, degrees. */
const STOP = 7;

export type Pointer = { at: number } | { stop: 'low' | 'high' };

/** A gauge with a needle, to be read by eye: the value stands nowhere in print. */
export function Dial({ gauge, scale, pointer }: { gauge: Gauge; scale: Scale; pointer: Pointer }) {
  const angle = (value: number) => START + (SWEEP * (value - gauge.range.min)) / (gauge.range.max - gauge.range.min);
  const needle = 'at' in pointer ? angle(pointer.at) : stopAngle(pointer.stop);
  return (
    <svg className={styles.instrument} viewBox="0 0 260 260" role="img" aria-label={useDialText(gauge, scale, pointer)}>
      <circle className={styles.rim} cx={CENTRE.x} cy={CENTRE.y} r={RIM} />
      {scaleMarks(scale, gauge.range).map(({ value, rank }) => (
        <path
          key={value}
          className={MARK_CLASS[rank]}
          d={`M${at(angle(value), MARKS)}L${at(angle(value), MARKS - MARK_LENGTH[rank])}`}
        />
      ))}
      {scaleMarks(scale, gauge.range)
        .filter(({ rank }) => rank === 0)
        .map(({ value }) => {
          const [x, y] = polar(angle(value), NUMBERS);
          return (
            <text key={value} className={styles.number} x={x} y={y + 5}>
              {value}
            </text>
          );
        })}
      <text className={styles.unit} x={CENTRE.x} y={CENTRE.y + 52}>
        {gauge.unit}
      </text>
      <text className={styles.class} x={CENTRE.x} y={CENTRE.y + 72}>
        {gauge.text.en.accuracy}
      </text>
      <path className={styles.needle} d={needlePath(needle)} />
      <circle className={styles.hub} cx={CENTRE.x} cy={CENTRE.y} r="7" />
    </svg>
  );
}

function useDialText(gauge: Gauge, scale: Scale, pointer: Pointer): string {
  const t = useTranslations('gauges');
  const about = t('dial', {
    name: gauge.text.en.name,
    numbers: String(scale.major),
    divisions: String(scale.minor),
    unit: gauge.unit,
  });
  if ('stop' in pointer) return `${about} ${t(`stop.${pointer.stop}`)}`;
  const { number, divisions, half } = markPosition(pointer.at, scale, gauge.range.min);
  const place = divisions === 0 && !half ? 'on' : half ? 'halfPast' : 'past';
  return `${about} ${t(`needle.${place}`, { number: String(number), divisions })}`;
}

function stopAngle(end: 'low' | 'high'): number {
  return end === 'low' ? START - STOP : START + SWEEP + STOP;
}

/** A slender triangle with a short tail, so that its tip tells half divisions apart. */
function needlePath(angle: number): string {
  return `M${at(angle, MARKS - 3)}L${at(angle + 90, 3)}L${at(angle + 180, 26)}L${at(angle - 90, 3)}Z`;
}

function at(degrees: number, radius: number): string {
  return polar(degrees, radius).join(' ');
}

/** Hundredths of a unit: enough for the eye, and the same text in every process. */
function polar(degrees: number, radius: number): [number, number] {
  const radians = (degrees * Math.PI) / 180;
  return [
    Number((CENTRE.x + radius * Math.cos(radians)).toFixed(2)),
    Number((CENTRE.y + radius * Math.sin(radians)).toFixed(2)),
  ];
}
