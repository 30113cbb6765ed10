import type { Catalogue } from '../catalogue';
import { dimensionOf, fromSi, toSi } from '../units';
import type { ReadingAct } from './acts';
import type { Note, SafetyEvent, Score } from './grade';
import type { CallGrade } from './grade-call';

/** What each lapse costs, as a share of the part. */
const UNWISE_CONDITION = 0.4;
const OFF_SCALE = 0.2;
const TOO_COARSE = 0.2;
const GOOD_PART_CONDEMNED = 0.4;
/** Below this share of a dial's span its class error is larger than most limits allow. */
const COARSE_BELOW = 0.1;

/** Every instrument that was lost to a pressure beyond its range, and every fitting opened under pressure. */
export function safetyEvents(readings: readonly (ReadingAct & { seq: number })[]): SafetyEvent[] {
  return readings.flatMap(({ seq, shown }) => {
    const code = DANGERS[shown.find(({ kind }) => kind in DANGERS)?.kind ?? ''];
    return code ? [{ seq, code }] : [];
  });
}

/** Outcomes of a reading that could have hurt someone. */
const DANGERS: Readonly<Record<string, SafetyEvent['code']>> = {
  destroyed: 'instrument-destroyed',
  jet: 'high-pressure-jet',
};

/** How the work was done: instrument range, condition, and whether good parts were left alone. */
export function gradePractice(
  readings: readonly (ReadingAct & { seq: number })[],
  catalogue: Catalogue,
  { wrongRepairs }: CallGrade,
): Score {
  const notes = readings.flatMap((reading) => lapses(reading, catalogue));
  for (const repair of wrongRepairs.filter((id) => !touchesNothing(id, catalogue)))
    notes.push({ part: 'practice', code: 'good-part-condemned', values: { repair } });
  if (readings.length === 0) notes.push({ part: 'practice', code: 'no-readings', values: {} });
  const lost = notes.reduce((sum, { code }) => sum + (COST[code] ?? 0), 0);
  if (notes.length === 0) notes.push({ part: 'practice', code: 'practice-clean', values: {} });
  return { share: Math.max(0, 1 - lost), notes };
}

/** A repair that leaves the fuel system alone condemns no part, however wrong it is. */
function touchesNothing(repair: string, { causes }: Catalogue): boolean {
  return [...causes.values()].some(
    ({ element, repairs }) => element === null && repairs.some(({ id }) => id === repair),
  );
}

const COST: Readonly<Record<string, number>> = {
  'instrument-destroyed': 1,
  'high-pressure-jet': 1,
  'unwise-condition': UNWISE_CONDITION,
  'off-scale': OFF_SCALE,
  'too-coarse': TOO_COARSE,
  'good-part-condemned': GOOD_PART_CONDEMNED,
  'no-readings': 1,
};

function lapses(reading: ReadingAct & { seq: number }, { checks, gauges }: Catalogue): Note[] {
  const values = { seq: reading.seq, instrument: reading.instrument, condition: reading.condition };
  const note = (code: string): Note => ({ part: 'practice', code, values });
  const found: Note[] = [];
  if (checks.get(reading.check)?.unwiseConditions.includes(reading.condition)) found.push(note('unwise-condition'));
  const gauge = gauges.get(reading.instrument);
  for (const shown of reading.shown) {
    const danger = DANGERS[shown.kind];
    if (danger && !found.some(({ code }) => code === danger)) found.push(note(danger));
    if (shown.kind === 'off-scale') found.push(note('off-scale'));
    const coarse = gauge?.display === 'dial' && finerExists(reading, shown, checks, gauges);
    if (coarse) found.push(note('too-coarse'));
  }
  return found;
}

/** The needle hardly left its stop, although an instrument that fits the check would have covered the reading better. */
function finerExists(
  { check, instrument }: ReadingAct,
  shown: ReadingAct['shown'][number],
  checks: Catalogue['checks'],
  gauges: Catalogue['gauges'],
): boolean {
  const used = gauges.get(instrument);
  if (shown.kind !== 'value' || !used || shown.value > COARSE_BELOW * used.range.max) return false;
  const others = (checks.get(check)?.instruments ?? []).flatMap((id) => gauges.get(id) ?? []);
  return others.some(({ unit, range }) => {
    if (dimensionOf(unit) !== dimensionOf(used.unit)) return false;
    const usedSpan = toSi(used.range.max, used.unit);
    const span = toSi(range.max, unit);
    return span < 0.5 * usedSpan && fromSi(toSi(shown.value, shown.unit), unit) < range.max;
  });
}
