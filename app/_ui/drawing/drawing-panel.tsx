import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { Drawing } from '@/lib/rig/drawing';
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

const KEY = ['suction', 'low', 'high', 'return'] as const;

/** The drawing in a panel of its own, with its ports as links lying over it and the key below. */
export function DrawingPanel({
  rig,
  drawing,
  ports,
  faulty,
}: {
  rig: Rig;
  drawing: Drawing;
  ports?: readonly PortLink[];
  faulty?: readonly string[];
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
            taps={ports !== undefined}
            {...(faulty !== undefined && { faulty })}
          />
          {ports?.map((port) => (
            <PortButton key={port.id} port={port} drawing={drawing} />
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
    </section>
  );
}

function PortButton({ port, drawing }: { port: PortLink; drawing: Drawing }) {
  const t = useTranslations('drawing');
  const place = drawing.ports[port.id];
  if (!place) return null;
  const [x, y] = place.at;
  return (
    <Link
      className={styles.port}
      style={{ left: `${(100 * x) / drawing.width}%`, top: `${(100 * y) / drawing.height}%` }}
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
