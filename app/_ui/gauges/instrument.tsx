import { useTranslations } from 'next-intl';
import type { Shown, ShownLine } from '@/lib/checks/shown';
import type { Gauge } from '@/lib/gauges/gauge';
import type { UnitChoice } from '../display-choices';
import { printedValue } from '../printed-value';
import { ClearHose } from './clear-hose';
import { CodeList } from './code-list';
import { Cylinder } from './cylinder';
import { DestroyedGauge } from './destroyed-gauge';
import { Dial } from './dial';
import { Digital } from './digital';
import { JetPicture } from './jet-picture';
import { Seen } from './seen';
import { TraceChart } from './trace-chart';

interface Showing {
  gauge: Gauge;
  shown: Shown;
  /** Names the quantity. */
  label: string;
  units: UnitChoice;
  /** Words for what an eye tells apart, from 0 up. */
  grades: readonly string[] | undefined;
  /** What the reading's recorder drew. */
  lines: readonly ShownLine[];
}

/** An instrument showing what was recorded of it, drawn from its data. */
export function Instrument({ gauge, shown, label, units, grades, lines }: Showing) {
  switch (shown.kind) {
    case 'destroyed':
      return <DestroyedGauge name={gauge.text.en.name} />;
    case 'jet':
      return <JetPicture />;
    case 'codes':
      return <CodeList codes={shown.codes} />;
    default:
      return <Measured gauge={gauge} shown={shown} label={label} units={units} grades={grades} lines={lines} />;
  }
}

function Measured({
  gauge,
  shown,
  label,
  units,
  grades,
  lines,
}: Showing & { shown: Extract<Shown, { kind: 'value' | 'off-scale' }> }) {
  const { scale, range } = gauge;
  const value = shown.kind === 'value' ? shown.value : undefined;
  const end = shown.kind === 'off-scale' ? shown.end : 'high';
  switch (gauge.display) {
    case 'dial': {
      const flutter = shown.kind === 'value' ? shown.flutter : undefined;
      return (
        scale && (
          <Dial gauge={gauge} scale={scale} pointer={value === undefined ? { stop: end } : { at: value, flutter }} />
        )
      );
    }
    case 'cylinder':
      return scale && <Cylinder gauge={gauge} scale={scale} level={value ?? 'overflowing'} />;
    case 'sight':
      return <ClearHose percent={value ?? range.max} />;
    case 'trace':
      return <Recording gauge={gauge} lines={lines} units={units} />;
    default:
      if (gauge.display === 'eye' && grades && value !== undefined)
        return <Seen text={grades[value] ?? String(value)} />;
      return (
        <Digital
          gauge={gauge}
          label={label}
          shown={value === undefined ? { offScale: end } : print(gauge, value, shown.unit, units)}
        />
      );
  }
}

function print(gauge: Gauge, value: number, unit: Gauge['unit'], units: UnitChoice) {
  return printedValue(value, unit, gauge.resolution, units);
}

function Recording({ gauge, lines, units }: Pick<Showing, 'gauge' | 'lines' | 'units'>) {
  const t = useTranslations('gauges.trace');
  if (lines.length === 0) return <Seen text={t('none')} />;
  return <TraceChart gauge={gauge} lines={lines} units={units} />;
}
