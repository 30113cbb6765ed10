import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import { isLowRange } from '../checks/low-range';
import type { ReadingAct } from './acts';
import type { SafetyEvent } from './grade';
import type { Numbered } from './marking';

/**
 * Everything that could have hurt someone: an instrument lost to a pressure beyond its range, a fitting opened under
 * pressure, an engine turned with a gauge on whose range ends below what the sheet lets one expect there.
 */
export function safetyEvents(
  readings: readonly Numbered<ReadingAct>[],
  theCase: Pick<Case, 'rig'>,
  catalogue: Catalogue,
): SafetyEvent[] {
  return readings.flatMap((reading) => {
    const code = cameToHarm(reading) ?? crankedLowRange(reading, theCase, catalogue);
    return code ? [{ seq: reading.seq, code }] : [];
  });
}

function cameToHarm({ shown }: ReadingAct): SafetyEvent['code'] | undefined {
  if (shown.some(({ kind }) => kind === 'destroyed')) return 'instrument-destroyed';
  return shown.some(({ kind }) => kind === 'jet') ? 'high-pressure-jet' : undefined;
}

function crankedLowRange(
  { check: checkId, condition, instrument }: ReadingAct,
  { rig }: Pick<Case, 'rig'>,
  { checks, gauges }: Catalogue,
): SafetyEvent['code'] | undefined {
  const [check, gauge] = [checks.get(checkId), gauges.get(instrument)];
  return check && gauge && isLowRange(gauge, check, condition, rig, checks) ? 'cranked-low-range' : undefined;
}
