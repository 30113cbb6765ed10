import { type SteadyConditionId, steadyConditionIds } from '../rig/condition';
import type { OperatingPoints } from '../rig/operating-point';
import type { Rig } from '../rig/rig';
import type { RigState } from '../rig/rig-state';
import { complaintOf, complaintValues, unfoundedComplaints } from '../symptoms/complaint';
import { troubleCodes } from '../symptoms/trouble-codes';
import { complaintIds, type TroubleCode, type WorkOrder } from '../symptoms/work-order';
import { between, SLICES, type Slice } from './strata';

/** What a driver and the control unit would notice: chances, as a slice may lie on either side of a threshold. */
export interface Noticed {
  /** By complaint in their order, worst first; the last one is that of no complaint at all. */
  complaint: Float64Array;
  /** By code, as listed. */
  codes: Float64Array;
}

/** A computed complaint or code is not quite certain: the true severity may lie just across a threshold. */
const SURPRISE = 0.01;
/** A second cause may bring the engine below a threshold that neither reaches alone. Assumed. */
const WORSE_TOGETHER = 0.15;

const NOTHING = complaintIds.length;

/** Places within a slice at which it is asked what would be noticed, as parts of its width from the middle. */
const PLACES = [-0.3, 0, 0.3] as const;

/** What is noticed over a slice, from what its rules look at, interpolated between the severities that were solved. */
export function noticedOver(rig: Rig, nodes: readonly RigState[], slice: Slice): Noticed {
  const [from, to] = [nodes[slice.lower]?.points, nodes[slice.upper]?.points];
  if (!from || !to) throw new RangeError('A slice lies between two solved severities');
  const places = from === to ? [0] : PLACES;
  const noticed = emptyNoticed(rig);
  for (const place of places) {
    const points = pointsBetween(rig, from, to, slice.share + place / SLICES);
    const stored = troubleCodes(rig, points);
    const complaint = complaintOf(rig, points, stored);
    addTo(noticed.complaint, complaint ? complaintIds.indexOf(complaint) : NOTHING, 1 / places.length);
    rig.codes.forEach((code, index) => {
      if (holds(stored, code)) addTo(noticed.codes, index, 1 / places.length);
    });
  }
  return noticed;
}

function emptyNoticed({ codes }: Rig): Noticed {
  return { complaint: new Float64Array(NOTHING + 1), codes: new Float64Array(codes.length) };
}

function addTo(chances: Float64Array, index: number, amount: number): void {
  chances[index] = (chances[index] as number) + amount;
}

/** Points that hold only what complaints and codes are read off. */
function pointsBetween(rig: Rig, from: OperatingPoints, to: OperatingPoints, share: number): OperatingPoints {
  const points = Object.fromEntries(
    steadyConditionIds.map((id) => [id, { pressures: {}, temperatures: {}, flows: {}, values: {} }]),
  ) as unknown as OperatingPoints;
  for (const [condition, key] of noticedValues(rig)) {
    const [lower, upper] = [from[condition].values[key], to[condition].values[key]];
    if (lower === undefined || upper === undefined) continue;
    const whole = isWhole(key);
    points[condition].values[key] = whole ? (share < 0.5 ? lower : upper) : between(lower, upper, share);
  }
  return points;
}

/** A yes or no has nothing in between. */
function isWhole(key: string): boolean {
  return key === 'willStart';
}

const lookedAt = new WeakMap<Rig, (readonly [SteadyConditionId, string])[]>();

function noticedValues(rig: Rig): (readonly [SteadyConditionId, string])[] {
  const known = lookedAt.get(rig) ?? [
    ...complaintValues,
    ...rig.codes.map(({ condition, value }): [SteadyConditionId, string] => [condition, value]),
  ];
  lookedAt.set(rig, known);
  return known;
}

/** Of two independent causes: every code of either, and the worse of the complaints. */
export function noticedTogether(one: Noticed, other: Noticed): Noticed {
  const codes = one.codes.map((chance, index) => 1 - (1 - chance) * (1 - (other.codes[index] as number)));
  const complaint = new Float64Array(NOTHING + 1);
  let [restOne, restOther] = [1, 1];
  for (let index = 0; index <= NOTHING; index++) {
    const [a, b] = [one.complaint[index] as number, other.complaint[index] as number];
    complaint[index] = a * restOther + b * restOne - a * b;
    restOne -= a;
    restOther -= b;
  }
  return { complaint: worsened(complaint), codes };
}

/** Shifts a share of each complaint to the worse ones. */
function worsened(complaint: Float64Array): Float64Array {
  const shifted = complaint.map((chance) => chance * (1 - WORSE_TOGETHER));
  complaint.forEach((chance, index) => {
    for (let worse = 0; worse < index; worse++)
      shifted[worse] = (shifted[worse] as number) + (chance * WORSE_TOGETHER) / index;
  });
  shifted[0] = (shifted[0] as number) + (complaint[0] as number) * WORSE_TOGETHER;
  return shifted;
}

/** Chance of the work order that was written. */
export function likelihoodOfOrder(
  { complaint, codes }: Noticed,
  all: readonly TroubleCode[],
  order: Pick<WorkOrder, 'complaint' | 'codes'>,
): number {
  const index = complaintIds.indexOf(order.complaint);
  // Of what nobody would notice, one of the unfounded complaints is made up.
  const madeUp = unfoundedComplaints.includes(order.complaint) ? 1 / unfoundedComplaints.length : 0;
  let chance = hedged((complaint[index] as number) + (complaint[NOTHING] as number) * madeUp);
  for (let code = 0; code < codes.length; code++) {
    const stored = holds(order.codes, all[code] as TroubleCode);
    chance *= hedged(stored ? (codes[code] as number) : 1 - (codes[code] as number));
  }
  return chance;
}

/** Chance that a driver would bring the vehicle in at all. */
export function chanceNoticed({ complaint }: Noticed): number {
  return 1 - (complaint[NOTHING] as number);
}

function hedged(chance: number): number {
  return SURPRISE + (1 - SURPRISE) * chance;
}

function holds(codes: readonly TroubleCode[], { spn, fmi }: TroubleCode): boolean {
  return codes.some((code) => code.spn === spn && code.fmi === fmi);
}
