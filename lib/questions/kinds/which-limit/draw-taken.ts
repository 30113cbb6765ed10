import { gaugeFor } from '../../../cases/perform-check';
import type { Check, Quantity } from '../../../checks/check';
import { findLimit } from '../../../checks/limit';
import { trueValue } from '../../../checks/quantity';
import type { Gauge } from '../../../gauges/gauge';
import { readGauge } from '../../../gauges/read-gauge';
import { inGaugeUnit } from '../../../gauges/uncertainty';
import type { SteadyConditionId } from '../../../rig/condition';
import type { LimitLine, Rig } from '../../../rig/rig';
import type { Unit } from '../../../units';
import type { Draw } from '../../kind';
import { checksOn } from '../../shared/checks-on';
import { drawAgain } from '../../shared/draw-again';
import { isNumber } from '../../shared/limited';
import { drawDay, type RigDay } from '../../shared/rig-day';
import type { WhichLimitRanges } from './ranges';

/** A reading that was taken, and the line that applies to it, if there is one. */
export interface Taken {
  check: Check;
  quantity: Quantity;
  condition: SteadyConditionId;
  instrument: string;
  value: number;
  unit: Unit;
  line: LimitLine | undefined;
  /** Of the same quantity, in the other conditions that the sheet has lines for, with what a sound rig reads there. */
  elsewhere: readonly { line: LimitLine; condition: SteadyConditionId; value: number }[];
}

/** Conditions in which somebody may have read it, whatever the procedure says. */
const READ_IN: readonly SteadyConditionId[] = ['key-on', 'cranking', 'idle', 'high-idle', 'full-load', 'key-off'];

export function drawTaken(
  { rig, ranges, catalogue, stream }: Draw<WhichLimitRanges>,
  topic: string | undefined,
): Taken {
  const without = stream('no line').next() < ranges.noLine;
  const all = checksOn(rig, catalogue, topic).flatMap((check) => candidatesOf(rig, check));
  const lacking = all.filter(({ line }) => !line);
  const candidates = without && lacking.length > 0 ? lacking : all.filter(({ line }) => line);
  return drawAgain(stream, (tried) => {
    const candidate = tried('check').pick(candidates);
    const instrument = catalogue.gauges.get(candidate.check.instruments[0] ?? '');
    const day = drawDay(tried('day'), rig, catalogue);
    return instrument && read(candidate, instrument, day);
  });
}

type Candidate = Omit<Taken, 'instrument' | 'value' | 'unit' | 'elsewhere'> & { rig: Rig };

/** Also without a line, where the sheet has one for another way of running the engine that may be taken for it. */
function candidatesOf(rig: Rig, check: Check): Candidate[] {
  return check.quantities.filter(isNumber).flatMap((quantity) => {
    const found = READ_IN.map((condition) => ({ condition, line: findLimit(rig, check.id, condition, quantity.id) }));
    const running = found.some(({ condition, line }) => line && turns(condition));
    return found
      .filter(({ condition, line }) => line || (running && turns(condition)))
      .map((one) => ({ rig, check, quantity, ...one }));
  });
}

function turns(condition: SteadyConditionId): boolean {
  return condition !== 'key-on' && condition !== 'key-off';
}

function read(candidate: Candidate, instrument: Gauge, day: RigDay): Taken | undefined {
  const { rig, check, quantity, condition, line } = candidate;
  const gauge = gaugeFor(instrument, quantity);
  const shownAt = (at: SteadyConditionId) => readGauge(gauge, inGaugeUnit(gauge, trueValue(day, at, quantity, 0)), 0);
  const shown = shownAt(condition);
  if (shown.kind !== 'value') return undefined;
  const elsewhere = READ_IN.filter((other) => other !== condition).flatMap((other) => {
    const there = findLimit(rig, check.id, other, quantity.id);
    const reading = there && shownAt(other);
    return there && reading?.kind === 'value' ? [{ line: there, condition: other, value: reading.value }] : [];
  });
  if (!line && elsewhere.length === 0) return undefined;
  return {
    check,
    quantity,
    condition,
    line,
    instrument: instrument.id,
    value: shown.value,
    unit: gauge.unit,
    elsewhere,
  };
}
