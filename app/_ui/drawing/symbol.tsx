import type { ElementKind } from '@/lib/rig/element';
import styles from './drawing.module.css';
import type { SymbolKind } from './symbol-box';

/** Half the length of a symbol along the flow: where lines reach it. Kinds without ends on the drawing have none. */
export const HALF_LENGTH: Partial<Record<ElementKind, number>> = {
  filter: 26,
  orifice: 24,
  'cooling-plate': 32,
  'check-valve': 14,
  'lift-pump': 24,
  'gear-pump': 24,
  'pressure-regulator': 14,
  'metering-valve': 14,
  'high-pressure-pump': 28,
  'relief-valve': 14,
  'pressure-control-valve': 14,
};

/** The injectors of a rail stand evenly from here to as far on the other side. */
const OUTERMOST = 75;

/** The symbol of an element, drawn around the origin with the flow to the right. */
export function ElementSymbol({ kind, cylinders = 6 }: { kind: SymbolKind; cylinders?: number }) {
  switch (kind) {
    case 'tank':
      return (
        <>
          <path className={styles.part} d="M-42 -36H42V36H-42Z" />
          <path className={styles.fine} d="M-42 -12H42" strokeDasharray="4 3" />
        </>
      );
    case 'filter':
      return (
        <>
          <path className={styles.part} d="M-26 0L0 -26L26 0L0 26Z" />
          <path className={styles.fine} d="M0 -26V26" strokeDasharray="4 3" />
        </>
      );
    case 'orifice':
      return <path className={styles.fine} d="M-24 0H24M-8 -14Q0 -4 8 -14M-8 14Q0 4 8 14" />;
    case 'screen':
      return <path className={styles.part} d="M-24 -16H24V16H-24ZM-12 -16V16M0 -16V16M12 -16V16M-24 -5H24M-24 6H24" />;
    case 'cooling-plate':
      return (
        <>
          <path className={styles.part} d="M-32 -20H32V20H-32Z" />
          <path className={styles.fine} d="M-22 9L-13 -9L-4 9L5 -9L14 9L23 -9" />
        </>
      );
    case 'check-valve':
      return (
        <>
          <path className={styles.part} d="M-14 -12H14V12H-14Z" />
          <path className={styles.fine} d="M-10 0L-2 -8M-10 0L-2 8M-14 0H-10M5 0H14" />
          <circle className={styles.fine} cx="0" cy="0" r="5" />
        </>
      );
    case 'lift-pump':
      return (
        <>
          <Pump radius={24} />
          <path className={styles.fine} d="M-6 24V34M6 24V34M-11 34H11" />
        </>
      );
    case 'gear-pump':
      return <Pump radius={24} />;
    case 'high-pressure-pump':
      return <Pump radius={28} />;
    case 'pressure-regulator':
    case 'relief-valve':
      return (
        <>
          <path className={styles.part} d="M-14 -14H14V14H-14Z" />
          <path className={styles.fine} d="M-9 0H9M4 -5L10 0L4 5M0 -14L-4 -18L4 -21L-4 -24" />
        </>
      );
    case 'pressure-control-valve':
      return (
        <>
          <path className={styles.part} d="M-14 -14H14V14H-14ZM-8 -28H8V-14H-8ZM-8 -18L8 -24" />
          <path className={styles.fine} d="M-9 0H9M4 -5L10 0L4 5" />
        </>
      );
    case 'metering-valve':
      return (
        <>
          <path className={styles.part} d="M-14 -18H14V18H-14Z" />
          <path className={styles.fine} d="M-9 -6H9M-9 6H9M-8 26L9 -26M9 -26L2 -21M9 -26L10 -18" />
        </>
      );
    case 'rail':
      return <rect className={`${styles.part} ${styles.heavy}`} x="-100" y="-12" width="200" height="24" rx="12" />;
    case 'rail-sensor':
      return (
        <>
          <path className={styles.fine} d="M0 14V30" />
          <path className={styles.part} d="M-16 -14H16V14H-16Z" />
          <path className={styles.fine} d="M-8 6L8 -6" />
        </>
      );
    case 'injectors':
      return (
        <>
          {injectorPlaces(cylinders).map((x) => (
            <path key={x} className={styles.part} d={`M${x - 5} 0V14L${x} 26L${x + 5} 14V0Z`} />
          ))}
          <path className={styles.return} d="M-75 44H82" />
        </>
      );
    case 'air-leak':
      return <Fitting />;
    case 'outside-leak':
      return (
        <>
          <Fitting />
          <path className={styles.part} d="M0 15L4.5 23A5 5 0 1 1 -4.5 23Z" />
        </>
      );
    default:
      return null;
  }
}

function injectorPlaces(cylinders: number): number[] {
  const gap = (2 * OUTERMOST) / Math.max(1, cylinders - 1);
  return Array.from({ length: cylinders }, (_, i) => i * gap - OUTERMOST);
}

/** Two flanges, where a line can leak. */
function Fitting() {
  return <path className={styles.part} d="M-8 -11H-2V11H-8ZM2 -11H8V11H2Z" />;
}

function Pump({ radius }: { radius: number }) {
  return (
    <>
      <circle className={styles.part} cx="0" cy="0" r={radius} />
      <path className={styles.solid} d={`M${radius} 0L${radius - 18} -11V11Z`} />
    </>
  );
}
