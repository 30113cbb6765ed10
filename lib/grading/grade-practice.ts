import type { Catalogue } from '../catalogue';
import { isLowRange } from '../checks/low-range';
import type { Shown } from '../checks/shown';
import type { Gauge } from '../gauges/gauge';
import { dimensionOf, fromSi, toSi } from '../units';
import type { ReadingAct } from './acts';
import type { CallGrade } from './grade-call';
import type { JudgedStep } from './judge-steps';
import type { Mark } from './mark';
import type { Numbered, Terms } from './marking';
import type { Rubric } from './rubric';
import type { Work } from './work';

type Practice = Rubric['practice'];

/** What practice is judged by. */
type Practised = Pick<Work, 'readings' | 'events' | 'restoring'> & {
  steps: readonly Pick<JudgedStep, 'grade' | 'sooner'>[];
};

/** How the work was done: instrument range, condition, order, putting right, and whether good parts were left alone. */
export function gradePractice(
  { readings, steps, events, restoring }: Practised,
  { wrongRepairs }: Pick<CallGrade, 'wrongRepairs'>,
  terms: Terms,
): Mark[] {
  if (readings.length === 0) return [{ code: 'no-readings', values: {}, share: 0, most: 1 }];
  const { catalogue, rubric } = terms;
  const { costs } = rubric.practice;
  const condemned = wrongRepairs.filter((id) => !touchesNothing(id, catalogue));
  const lapses = [
    // A dangerous act costs the whole part.
    ...events.map(({ seq, code }) => ({ code, values: { seq }, share: -1 })),
    ...readings.flatMap((reading) => lapsesOf(reading, terms)),
    ...steps.flatMap((step) => outOfOrder(step, costs)),
    ...restoring,
    ...condemned.map((repair) => lapse('good-part-condemned', { repair }, costs)),
  ];
  const code = lapses.length === 0 ? 'practice-clean' : 'practice-begun';
  return [{ code, values: {}, share: 1, most: 1 }, ...noFurtherThanNothing(lapses)];
}

/** Lapses add up, and no further than to nothing. */
function noFurtherThanNothing(lapses: readonly Mark[]): Mark[] {
  let left = 1;
  return lapses.map((one) => {
    const lost = Math.min(left, -one.share);
    left -= lost;
    return { ...one, share: -lost };
  });
}

function lapse(code: keyof Practice['costs'], values: Mark['values'], costs: Practice['costs']): Mark {
  return { code, values, share: -costs[code] };
}

/** A long check made while a short one told as much per minute. */
function outOfOrder({ grade, sooner }: Practised['steps'][number], costs: Practice['costs']): Mark[] {
  if (!sooner) return [];
  const { check, condition, minutes: shorter } = sooner;
  return [lapse('long-before-short', { seq: grade.seq, minutes: grade.minutes, check, condition, shorter }, costs)];
}

/** A repair that leaves the fuel system alone condemns no part, however wrong it is. */
function touchesNothing(repair: string, { causes }: Catalogue): boolean {
  return [...causes.values()].some(
    ({ element, repairs }) => element === null && repairs.some(({ id }) => id === repair),
  );
}

function lapsesOf(reading: Numbered<ReadingAct>, terms: Terms): Mark[] {
  const { seq, check, condition, instrument, shown } = reading;
  const { practice } = terms.rubric;
  const note = (code: keyof Practice['costs']) => lapse(code, { seq, instrument, condition }, practice.costs);
  const fitting = fittingInstruments(reading, terms);
  if (!fitting) return [];
  const unwise = terms.catalogue.checks.get(check)?.unwiseConditions.includes(condition);
  const offScale = shown.some((one) => widerExists(fitting, one));
  const coarse = fitting.used.display === 'dial' && shown.some((one) => finerExists(fitting, one, practice));
  return [
    ...(unwise ? [note('unwise-condition')] : []),
    ...(offScale ? [note('off-scale')] : []),
    ...(coarse ? [note('too-coarse')] : []),
  ];
}

/** The instrument used, and others of its kind of unit that fit the check as well and could not burst. */
interface Fitting {
  used: Gauge;
  others: readonly Gauge[];
}

function fittingInstruments(
  { check: checkId, condition, instrument }: ReadingAct,
  { theCase, catalogue: { checks, gauges } }: Terms,
): Fitting | undefined {
  const [used, check] = [gauges.get(instrument), checks.get(checkId)];
  if (!used || !check) return undefined;
  const fit = check.instruments.flatMap((id) => gauges.get(id) ?? []);
  const alike = fit.filter(({ unit }) => dimensionOf(unit) === dimensionOf(used.unit));
  return { used, others: alike.filter((gauge) => !isLowRange(gauge, check, condition, theCase.rig, checks)) };
}

/** The pointer stood at its stop, although another instrument would have gone further. */
function widerExists({ used, others }: Fitting, shown: Shown): boolean {
  if (shown.kind !== 'off-scale') return false;
  const { end } = shown;
  const at = toSi(used.range[end === 'high' ? 'max' : 'min'], used.unit);
  return others.some(({ unit, range }) => (end === 'high' ? toSi(range.max, unit) > at : toSi(range.min, unit) < at));
}

/** The needle hardly left its stop, although another instrument would have covered the reading better. */
function finerExists({ used, others }: Fitting, shown: Shown, { coarseBelow }: Practice): boolean {
  if (shown.kind !== 'value' || shown.value > coarseBelow * used.range.max) return false;
  const usedSpan = toSi(used.range.max, used.unit);
  return others.some(
    ({ unit, range }) =>
      toSi(range.max, unit) < 0.5 * usedSpan && fromSi(toSi(shown.value, shown.unit), unit) < range.max,
  );
}
