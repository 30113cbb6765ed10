import { isReadByEye } from '@/app/_server/decide-finding';
import { areas } from '@/lib/areas';
import { gaugeFor } from '@/lib/cases/perform-check';
import { compareMeasured } from '@/lib/checks/expected';
import { findLimit, limitBounds } from '@/lib/checks/limit';
import { verdictOf } from '@/lib/checks/verdict';
import type { Belief, Reading } from '@/lib/diagnosis/belief';
import { byArea } from '@/lib/diagnosis/shares';
import type { FindingAct, ReadingAct } from '@/lib/grading/acts';
import { STANDARD_RUBRIC } from '@/lib/grading/rubric';
import type { Job } from './job';
import type { Numbered } from './notebook';

/**
 * What somebody writes down who reads the dial right, knows the limit sheet, and weighs causes as belief does; undefined
 * where the sheet has no line. An area that lost much and still carries much stays suspect.
 */
export function soundFinding(
  job: Job,
  { seq, instrument: instrumentId, shown: all }: Numbered<ReadingAct>,
  { check, condition, quantity, seen }: Reading,
  before: Belief,
  after: Belief,
): FindingAct | undefined {
  const line = findLimit(job.theCase.rig, check, condition, quantity.id);
  if (!line) return undefined;
  const comparison = compareMeasured(seen, limitBounds(line));
  const shown = all.find((one) => one.quantity === quantity.id);
  const instrument = job.catalogue.gauges.get(instrumentId);
  const gauge = instrument && gaugeFor(instrument, quantity);
  return {
    kind: 'finding',
    reading: seq,
    quantity: quantity.id,
    entered: shown?.kind === 'value' && isReadByEye(gauge, shown) ? { value: shown.value, unit: shown.unit } : null,
    verdict: verdictOf(comparison),
    comparison,
    limit: line.id,
    ...implied(job, before, after),
    words: '',
  };
}

function implied(
  { particles, catalogue }: Job,
  before: Belief,
  after: Belief,
): Pick<FindingAct, 'clears' | 'suspects'> {
  const reason = catalogue.rubrics.get(STANDARD_RUBRIC)?.reason;
  if (!reason) throw new RangeError(`Content has no rubric ${STANDARD_RUBRIC}`);
  const [was, is] = [byArea(particles, before), byArea(particles, after)];
  const suspects = areas.filter((area) => is[area] >= reason.suspectFrom);
  const clears = areas.filter(
    (area) => !suspects.includes(area) && was[area] >= reason.hardly && is[area] < reason.clearedBelow * was[area],
  );
  return { clears, suspects };
}
