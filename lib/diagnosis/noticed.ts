import { type SteadyConditionId, steadyConditionIds } from '../rig/condition';
import type { OperatingPoints } from '../rig/operating-point';
import type { Rig } from '../rig/rig';
import type { RigState } from '../rig/rig-state';
import { complaintOf, complaintValues, unfoundedComplaints } from '../symptoms/complaint';
import { troubleCodes } from '../symptoms/trouble-codes';
import { complaintIds, type TroubleCode, type WorkOrder } from '../symptoms/work-order';
import { interpolate } from './interpolate';
import { SLICES, type Slice } from './strata';

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

/**
 * Places around the middle of a slice at which it is asked what would be noticed, in widths of it. They reach into the
 * next slices, as interpolation puts a threshold no nearer than that.
 */
const PLACES = [-0.9, -0.3, 0.3, 0.9] as const;

/** What is noticed over a slice, from what its rules look at, interpolated between the severities that were solved. */
export function noticedOver(rig: Rig, nodes: readonly RigState[], slice: Slice): Noticed {
  const places = slice.lower === slice.upper ? [0] : PLACES;
  const noticed = emptyNoticed(rig);
  for (const place of places) {
    const points = pointsAt(rig, nodes, slice.lower + slice.share + place / SLICES);
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

/**
 * Points that hold only what complaints and codes are read off.
 *
 * @param place  Counted in solved severities from the mildest.
 */
function pointsAt(rig: Rig, nodes: readonly RigState[], place: number): OperatingPoints {
  const points = Object.fromEntries(
    steadyConditionIds.map((id) => [id, { pressures: {}, temperatures: {}, flows: {}, values: {} }]),
  ) as unknown as OperatingPoints;
  const within = Math.min(nodes.length - 1, Math.max(0, place));
  const lower = Math.min(Math.max(0, nodes.length - 2), Math.floor(within));
  for (const [condition, key] of noticedValues(rig)) {
    // What a point does not have is never there, such as the time to enable an engine that does not start.
    const at = (node: number) => nodes[node]?.points[condition].values[key] ?? Number.POSITIVE_INFINITY;
    const value = isWhole(key) ? at(Math.round(within)) : interpolate(at, nodes.length, lower, within - lower);
    if (Number.isFinite(value)) points[condition].values[key] = value;
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
