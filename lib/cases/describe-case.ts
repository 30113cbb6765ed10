import type { Catalogue } from '../catalogue';
import type { Check, Quantity } from '../checks/check';
import { compareMeasured, measured } from '../checks/expected';
import { findLimit, limitBounds } from '../checks/limit';
import { trueValue } from '../checks/quantity';
import type { Shown } from '../checks/shown';
import { type Verdict, verdictOf } from '../checks/verdict';
import type { ConditionId } from '../rig/condition';
import type { OperatingPoints } from '../rig/operating-point';
import type { Unit } from '../units';
import type { Case } from './case';
import { gaugeFor, showQuantity } from './perform-check';

/** One reading as an instructor sees it: what the procedure's own instrument shows, and the truth behind it. */
export interface DescribedReading {
  check: string;
  condition: ConditionId;
  port: string;
  quantity: string;
  /** What the instrument shows; null when it was destroyed. The end of the range when it is off the scale. */
  value: number | null;
  unit: Unit;
  /** True value, SI. */
  si: number;
  limit: { min?: number; max?: number; unit: Unit } | null;
  verdict: Verdict | null;
}

/** A case with its truth and every reading in every condition that the checks allow. */
export interface DescribedCase {
  caseCode: string;
  generatorVersion: number;
  contentHash: string;
  rig: string;
  seed: string;
  causes: { id: string; element: string | null; severity: number }[];
  complaint: string;
  codes: { spn: number; fmi: number; text: string }[];
  readings: DescribedReading[];
  state: OperatingPoints;
}

/**
 * For instructors, tests and outside checks. Never for a learner's browser.
 *
 * @param traces  Whether to follow the traces too, which takes some thirty times as long as all the rest.
 */
export function describeCase(theCase: Case, catalogue: Catalogue, traces = true): DescribedCase {
  const { truth, workOrder, rig } = theCase;
  const faults = truth.also ? [truth, truth.also] : [truth];
  return {
    caseCode: theCase.code,
    generatorVersion: theCase.generatorVersion,
    contentHash: theCase.contentHash,
    rig: rig.id,
    seed: theCase.spec.seed,
    causes: faults.map(({ cause, severity }) => ({
      id: cause,
      element: catalogue.causes.get(cause)?.element ?? null,
      severity,
    })),
    complaint: workOrder.complaint,
    codes: workOrder.codes.map(({ spn, fmi }) => ({ spn, fmi, text: codeText(catalogue, spn, fmi) })),
    readings: describeReadings(theCase, catalogue, traces),
    state: theCase.points,
  };
}

/** The words of the open standard for a trouble code. */
export function codeText({ codeNames }: Catalogue, spn: number, fmi: number): string {
  return `${codeNames.spn[spn] ?? `SPN ${spn}`}: ${codeNames.fmi[fmi] ?? `FMI ${fmi}`}`;
}

function describeReadings(theCase: Case, catalogue: Catalogue, traces: boolean): DescribedReading[] {
  return [...catalogue.checks.values()].flatMap((check) =>
    check.ports[theCase.rig.id]
      ? check.conditions.flatMap((condition) =>
          check.quantities
            .filter(({ of }) => traces || of.kind !== 'trace')
            .map((quantity) => describeReading(theCase, catalogue, check, condition, quantity)),
        )
      : [],
  );
}

function describeReading(
  theCase: Case,
  { gauges }: Catalogue,
  check: Check,
  condition: ConditionId,
  quantity: Quantity,
): DescribedReading {
  const instrument = gauges.get(check.instruments[0] ?? '');
  if (!instrument) throw new RangeError(`Check ${check.id} has no instrument`);
  const gauge = gaugeFor(instrument, quantity);
  const shown = showQuantity(theCase, condition, instrument, quantity);
  const line = findLimit(theCase.rig, check.id, condition, quantity.id);
  const seen = measured(shown, gauge);
  return {
    check: check.id,
    condition,
    port: (check.ports[theCase.rig.id] ?? []).join('-'),
    quantity: quantity.id,
    value: shownNumber(shown),
    unit: gauge.unit,
    si: trueValue(theCase, condition, quantity, theCase.workOrder.codes.length),
    limit: line
      ? {
          ...(line.min !== undefined && { min: line.min }),
          ...(line.max !== undefined && { max: line.max }),
          unit: line.unit,
        }
      : null,
    verdict: line && seen ? verdictOf(compareMeasured(seen, limitBounds(line))) : null,
  };
}

function shownNumber(shown: Shown): number | null {
  switch (shown.kind) {
    case 'value':
      return shown.value;
    case 'off-scale':
      return shown.limit;
    case 'codes':
      return shown.codes.length;
    case 'destroyed':
    case 'jet':
      return null;
  }
}
