import { useTranslations } from 'next-intl';
import type { Gauge } from '@/lib/gauges/gauge';
import { withUnit } from '../show-quantity';
import styles from './gauges.module.css';
import { markPosition, type Scale, scaleMarks } from './mark-position';
import { angleOf, needlePath, type Pointer, point, pointerAngle, polar, sectorPath, swingOf } from './needle';

const CENTRE = { x: 130, y: 130 };
const RIM = 118;
const MARKS = 90;
const NUMBERS = 103;
const MARK_LENGTH = [16, 12, 8] as const;
const MARK_CLASS = [styles.numberedMark, styles.halfMark, styles.mark] as const;

/** A gauge with a needle, to be read by eye: the value stands nowhere in print. */
export function Dial({ gauge, scale, pointer }: { gauge: Gauge; scale: Scale; pointer: Pointer }) {
  const t = useTranslations('gauges');
  const text = useDialText(gauge, scale, pointer);
  const swings = 'at' in pointer && pointer.flutter !== undefined;
  return (
    <>
      <svg className={styles.instrument} viewBox="0 0 260 260" role="img" aria-label={text}>
        <circle className={styles.rim} cx={CENTRE.x} cy={CENTRE.y} r={RIM} />
        <DialMarks gauge={gauge} scale={scale} />
        <text className={styles.unit} x={CENTRE.x} y={CENTRE.y + 52}>
          {gauge.unit}
        </text>
        <text className={styles.class} x={CENTRE.x} y={CENTRE.y + 72}>
          {gauge.text.en.accuracy}
        </text>
        <Needle range={gauge.range} pointer={pointer} />
        <circle className={styles.hub} cx={CENTRE.x} cy={CENTRE.y} r="7" />
      </svg>
      {swings && <p className={styles.swings}>{t('swings', { amount: swingWords(gauge, pointer.flutter) })}</p>}
    </>
  );
}

function DialMarks({ gauge: { range }, scale }: { gauge: Gauge; scale: Scale }) {
  return scaleMarks(scale, range).map(({ value, rank }) => {
    const angle = angleOf(value, range);
    const [x, y] = polar(angle, NUMBERS);
    return (
      <g key={value}>
        <path className={MARK_CLASS[rank]} d={`M${point(angle, MARKS)}L${point(angle, MARKS - MARK_LENGTH[rank])}`} />
        {rank === 0 && (
          <text className={styles.number} x={x} y={y + 5}>
            {value}
          </text>
        )}
      </g>
    );
  });
}

/** The needle, with what it sweeps over and its two ends where it does not stand still. */
function Needle({ range, pointer }: { range: Gauge['range']; pointer: Pointer }) {
  const angle = pointerAngle(pointer, range);
  const swing = swingOf(pointer, range);
  if (!swing) return <path className={styles.needle} d={needlePath(angle)} />;
  const ends = { '--from': `${swing.from - angle}deg`, '--to': `${swing.to - angle}deg` } as React.CSSProperties;
  return (
    <>
      <path className={styles.swept} d={sectorPath(swing.from, swing.to)} />
      <path className={styles.faint} d={needlePath(swing.from)} />
      <path className={styles.faint} d={needlePath(swing.to)} />
      <path className={styles.needle} d={needlePath(angle)} />
      <path className={`${styles.faint} ${styles.swinging}`} style={ends} d={needlePath(angle)} />
    </>
  );
}

function swingWords({ unit }: Gauge, flutter: number | undefined): string {
  return withUnit(String(flutter ?? 0), unit);
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
