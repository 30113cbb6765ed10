import type { Shown } from '@/lib/checks/shown';
import type { Gauge } from '@/lib/gauges/gauge';
import { ClearHose } from './clear-hose';
import { CodeList } from './code-list';
import { Cylinder } from './cylinder';
import { DestroyedGauge } from './destroyed-gauge';
import { Dial } from './dial';
import { Digital } from './digital';

/** An instrument showing what was recorded of it, drawn from its data. `label` names the quantity. */
export function Instrument({ gauge, shown, label }: { gauge: Gauge; shown: Shown; label: string }) {
  if (shown.kind === 'destroyed') return <DestroyedGauge name={gauge.text.en.name} />;
  if (shown.kind === 'codes') return <CodeList codes={shown.codes} />;
  const { scale } = gauge;
  if (gauge.display === 'dial' && scale)
    return (
      <Dial gauge={gauge} scale={scale} pointer={shown.kind === 'value' ? { at: shown.value } : { stop: shown.end }} />
    );
  if (gauge.display === 'cylinder' && scale)
    return <Cylinder gauge={gauge} scale={scale} level={shown.kind === 'value' ? shown.value : 'overflowing'} />;
  if (gauge.display === 'sight') return <ClearHose percent={shown.kind === 'value' ? shown.value : gauge.range.max} />;
  return (
    <Digital
      gauge={gauge}
      label={label}
      shown={shown.kind === 'value' ? { value: shown.value, unit: shown.unit } : { offScale: shown.end }}
    />
  );
}
