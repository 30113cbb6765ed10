import type { Catalogue } from '../catalogue';
import type { Check, Quantity } from '../checks/check';
import { jetFrom } from '../checks/jet';
import { needleSwing } from '../checks/needle-swing';
import { trueValue } from '../checks/quantity';
import { recordedLines } from '../checks/recorded-lines';
import type { Shown, ShownLine } from '../checks/shown';
import type { Gauge } from '../gauges/gauge';
import { drawBias, readGauge } from '../gauges/read-gauge';
import { inGaugeUnit } from '../gauges/uncertainty';
import { randomStream } from '../random';
import type { ConditionId } from '../rig/condition';
import type { RigState } from '../rig/rig-state';
import { canRun } from '../symptoms/complaint';
import { fromSi } from '../units';
import type { Case } from './case';

/** What a learner hooks up: ids as they came in, not yet trusted. */
export interface HookUp {
  check: string;
  condition: string;
  instrument: string;
}

export type HookUpError =
  | 'unknown-check'
  | 'not-on-this-rig'
  | 'condition-not-possible'
  | 'engine-does-not-run'
  | 'unknown-instrument'
  | 'instrument-does-not-fit';

/** A hook-up whose ids are known to belong together. */
export interface ValidHookUp {
  check: Check;
  condition: ConditionId;
  instrument: Gauge;
}

/** The door between what was asked for and what can be done on this case's rig. */
export function checkHookUp(
  { rig, points }: Case,
  { checks, gauges }: Catalogue,
  hookUp: HookUp,
): ValidHookUp | { error: HookUpError } {
  const check = checks.get(hookUp.check);
  if (!check) return { error: 'unknown-check' };
  if (!check.ports[rig.id]) return { error: 'not-on-this-rig' };
  const condition = conditionsOf(check).find((id) => id === hookUp.condition);
  if (!condition) return { error: 'condition-not-possible' };
  const instrument = gauges.get(hookUp.instrument);
  if (!instrument) return { error: 'unknown-instrument' };
  if (!check.instruments.includes(instrument.id)) return { error: 'instrument-does-not-fit' };
  if (!canRun(points, condition)) return { error: 'engine-does-not-run' };
  return { check, condition, instrument };
}

/** Conditions in which a check can be done, wise or not. */
export function conditionsOf({ conditions, unwiseConditions }: Check): ConditionId[] {
  return [...conditions, ...unwiseConditions];
}

/** Hooks up and reads: what the instrument shows for each quantity of the check. */
export function performCheck(
  theCase: Case,
  catalogue: Catalogue,
  hookUp: HookUp,
): { shown: Shown[] } | { error: HookUpError } {
  const valid = checkHookUp(theCase, catalogue, hookUp);
  if ('error' in valid) return valid;
  const { check, condition, instrument } = valid;
  const jet = jetFrom(theCase, check, condition);
  if (jet) return { shown: check.quantities.map(({ id }) => ({ ...jet, quantity: id })) };
  return { shown: check.quantities.map((quantity) => showQuantity(theCase, condition, instrument, quantity)) };
}

/** As much of a case as an instrument sees. */
export interface Measurable extends RigState {
  spec: Pick<Case['spec'], 'seed'>;
  workOrder: Pick<Case['workOrder'], 'codes'>;
}

/** What one instrument shows of one quantity on this case's rig. */
export function showQuantity(
  theCase: Measurable,
  condition: ConditionId,
  instrument: Gauge,
  quantity: Quantity,
): Shown {
  const { codes } = theCase.workOrder;
  if (quantity.measures === 'codes') return { kind: 'codes', quantity: quantity.id, codes };
  const gauge = gaugeFor(instrument, quantity);
  const truth = inGaugeUnit(gauge, trueValue(theCase, condition, quantity, codes.length));
  const bias = drawBias(randomStream(theCase.spec.seed, `bias ${instrument.id}`));
  const reading = readGauge(gauge, truth, bias);
  switch (reading.kind) {
    case 'value':
      return {
        kind: 'value',
        quantity: quantity.id,
        value: reading.value,
        unit: gauge.unit,
        ...flutterOf(theCase, condition, gauge, quantity),
        ...linesOf(theCase, quantity),
      };
    case 'off-scale': {
      const limit = reading.end === 'high' ? gauge.range.max : gauge.range.min;
      return {
        kind: 'off-scale',
        quantity: quantity.id,
        end: reading.end,
        limit,
        unit: gauge.unit,
        ...linesOf(theCase, quantity),
      };
    }
    case 'destroyed':
      return { kind: 'destroyed', quantity: quantity.id };
  }
}

/** A needle that swings by less than it can be read to stands still. */
function flutterOf(
  theCase: Measurable,
  condition: ConditionId,
  gauge: Gauge,
  quantity: Quantity,
): { flutter?: number } {
  if (gauge.display !== 'dial') return {};
  const swing = needleSwing(theCase, condition, quantity) * (fromSi(1, gauge.unit) - fromSi(0, gauge.unit));
  const flutter = Math.round(swing / gauge.resolution) * gauge.resolution;
  return flutter > 0 ? { flutter: Number(flutter.toPrecision(6)) } : {};
}

function linesOf(theCase: Measurable, { of }: Quantity): { lines?: ShownLine[] } {
  return of.kind === 'trace' ? { lines: recordedLines(theCase.traces.get(of.trace)) } : {};
}

/** A screen or meter shows each quantity in that quantity's unit; any other instrument has its own. */
export function gaugeFor(instrument: Gauge, { unit }: Quantity): Gauge {
  if (!unit) return instrument;
  return { ...instrument, ...instrument.alsoReads?.find((setting) => setting.unit === unit), unit };
}
