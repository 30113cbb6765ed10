import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { Drawing, Point } from '@/lib/rig/drawing';
import type { Rig } from '@/lib/rig/rig';
import ui from '../ui.module.css';
import styles from './drawing.module.css';
import { RigDrawing } from './rig-drawing';

export interface PortLink {
  id: string;
  name: string;
  href: string;
  chosen: boolean;
}

/** What stands at a port, in the same unit throughout unless it names its own. */
export interface PortPressureLabel {
  port: string;
  before: string;
  after: string;
  unit: string | undefined;
  moved: boolean;
}

const KEY = ['suction', 'low', 'high', 'return'] as const;

/** The drawing in a panel of its own, with its ports as links lying over it and the key below. */
export function DrawingPanel({
  rig,
  drawing,
  ports,
  faulty,
  pressures,
  children,
}: {
  rig: Rig;
  drawing: Drawing;
  ports?: readonly PortLink[];
  faulty?: readonly string[];
  /** Seen only: what they say must stand beside the drawing as well. */
  pressures?: readonly PortPressureLabel[];
  /** Stands below the key. */
  children?: React.ReactNode;
}) {
  const t = useTranslations('drawing');
  return (
    <section className={ui.panel} style={{ padding: 0 }} aria-labelledby="drawing-title">
      <div className={ui.head} style={{ padding: '14px 16px 0', margin: 0 }}>
        <h2 id="drawing-title">{t('title')}</h2>
        {ports && <span className={ui.small}>{t('hint')}</span>}
        {faulty !== undefined && faulty.length > 0 && <span className={ui.small}>{t('ring')}</span>}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard */}
      <section className={styles.pan} aria-label={t('pan')} tabIndex={0}>
        <div className={styles.sheet}>
          <RigDrawing
            rig={rig}
            drawing={drawing}
            taps={(ports ?? pressures ?? []).map((tapped) => ('port' in tapped ? tapped.port : tapped.id))}
            {...(faulty !== undefined && { faulty })}
          />
          {ports?.map((port) => (
            <PortButton key={port.id} port={port} drawing={drawing} />
          ))}
          {pressures?.map((label) => (
            <PressureLabel key={label.port} label={label} drawing={drawing} />
          ))}
        </div>
      </section>
      <ul className={styles.key} aria-label={t('key')}>
        {KEY.map((side) => (
          <li key={side}>
            <svg width="40" height="10" aria-hidden="true">
              <path className={styles[side]} d="M2 5H38" />
            </svg>
            {t(`side.${side}`)}
          </li>
        ))}
      </ul>
      {children}
    </section>
  );
}

/** Before above, after below. */
function PressureLabel({
  label: { port, before, after, unit, moved },
  drawing,
}: {
  label: PortPressureLabel;
  drawing: Drawing;
}) {
  const place = drawing.ports[port];
  if (!place) return null;
  return (
    <div
      className={moved ? `${styles.pressure} ${styles.moved}` : styles.pressure}
      style={placed(place.at, drawing)}
      aria-hidden="true"
    >
      <b>{unit ? `${port} ${unit}` : port}</b>
      <span className={styles.reading}>{before}</span>
      <span className={`${styles.reading} ${styles.repaired}`}>{`→ ${after}`}</span>
    </div>
  );
}

function placed([x, y]: Point, { width, height }: Drawing): { left: string; top: string } {
  return { left: `${(100 * x) / width}%`, top: `${(100 * y) / height}%` };
}

function PortButton({ port, drawing }: { port: PortLink; drawing: Drawing }) {
  const t = useTranslations('drawing');
  const place = drawing.ports[port.id];
  if (!place) return null;
  return (
    <Link
      className={styles.port}
      style={placed(place.at, drawing)}
      href={port.href}
      scroll={false}
      prefetch={false}
      aria-label={t('port', { id: port.id, name: port.name })}
      aria-current={port.chosen ? 'true' : undefined}
    >
      <span>{port.id}</span>
    </Link>
  );
}
