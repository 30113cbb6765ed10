import { gaugeFor } from '@/lib/cases/perform-check';
import type { Catalogue } from '@/lib/catalogue';
import type { Shown } from '@/lib/checks/shown';
import type { Gauge } from '@/lib/gauges/gauge';
import type { Act, FindingAct, ReadingAct } from '@/lib/grading/acts';
import type { Rig } from '@/lib/rig/rig';
import { dimensionOf } from '@/lib/units';

export type FindingError =
  | 'reading-not-found'
  | 'nothing-to-judge'
  | 'already-judged'
  | 'value-missing'
  | 'value-not-read'
  | 'unit-does-not-fit'
  | 'unknown-limit'
  | 'area-twice';

/** What writing a finding down comes to after `acts`: one for each quantity of each reading. */
export function decideFinding(
  rig: Rig,
  catalogue: Catalogue,
  acts: readonly (Act & { seq: number })[],
  finding: FindingAct,
): { act: FindingAct } | { error: FindingError } {
  const reading = acts.find(
    (act): act is ReadingAct & { seq: number } => act.kind === 'reading' && act.seq === finding.reading,
  );
  const shown = reading?.shown.find(({ quantity }) => quantity === finding.quantity);
  if (!reading || !shown) return { error: 'reading-not-found' };
  if (shown.kind === 'destroyed' || shown.kind === 'jet') return { error: 'nothing-to-judge' };
  if (acts.some((act) => isSame(act, finding))) return { error: 'already-judged' };
  if (finding.clears.some((area) => finding.suspects.includes(area))) return { error: 'area-twice' };
  if (finding.limit !== null && !rig.limits.some(({ id }) => id === finding.limit)) return { error: 'unknown-limit' };
  const error = valueError(gaugeOf(reading, finding.quantity, catalogue), shown, finding);
  return error ? { error } : { act: finding };
}

function isSame(act: Act, { reading, quantity }: FindingAct): boolean {
  return act.kind === 'finding' && act.reading === reading && act.quantity === quantity;
}

function gaugeOf(reading: ReadingAct, quantity: string, { checks, gauges }: Catalogue): Gauge | undefined {
  const instrument = gauges.get(reading.instrument);
  const found = checks.get(reading.check)?.quantities.find(({ id }) => id === quantity);
  return instrument && found && gaugeFor(instrument, found);
}

/** A scale or a curve has to be read; where the instrument prints its value, or shows none, there is nothing to read. */
function valueError(gauge: Gauge | undefined, shown: Shown, { entered }: FindingAct): FindingError | undefined {
  if (!isReadByEye(gauge, shown)) return entered ? 'value-not-read' : undefined;
  if (!entered) return 'value-missing';
  return gauge && dimensionOf(entered.unit) === dimensionOf(gauge.unit) ? undefined : 'unit-does-not-fit';
}

const READ_BY_EYE: readonly Gauge['display'][] = ['dial', 'cylinder', 'trace'];

/** Whether the learner has to read a number off a scale. */
export function isReadByEye(gauge: Gauge | undefined, shown: Shown): boolean {
  return shown.kind === 'value' && gauge !== undefined && READ_BY_EYE.includes(gauge.display);
}
