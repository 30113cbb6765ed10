import type { SteadyConditionId } from '../rig/condition';
import type { OperatingPoints } from '../rig/operating-point';
import type { Rig } from '../rig/rig';
import type { RigState } from '../rig/rig-state';
import { complaintOf, complaintValues, unfoundedComplaints } from '../symptoms/complaint';
import { troubleCodes } from '../symptoms/trouble-codes';
import { complaintIds, type TroubleCode, type WorkOrder } from '../symptoms/work-order';
import { interpolate } from './interpolate';
import type { Strata } from './strata';

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

/** Places in a slice at which it is asked what would be noticed. */
const PLACES = 2;

/**
 * What is noticed over each slice, from what its rules look at, interpolated between the severities that were solved. A
 * slice counts the nearest place of its neighbours too, as interpolation puts a threshold no nearer than that.
 */
export function noticedOver(rig: Rig, { nodes, slices, perGap }: Strata): Noticed[] {
  const rows = rowsOf(rig, nodes);
  const places = slices.length * PLACES;
  const stored = Array.from({ length: places }, (_, place) => {
    const step = ((place + 0.5) / PLACES / perGap) * Number(nodes.length > 1);
    return storedAt(rig, rows, step);
  });
  return slices.map((_, slice) => {
    const noticed = emptyNoticed(rig);
    const from = Math.max(0, slice * PLACES - 1);
    const to = Math.min(places - 1, (slice + 1) * PLACES);
    for (let place = from; place <= to; place++) count(noticed, stored[place] as Stored, 1 / (to - from + 1));
    return noticed;
  });
}

/** What is noticed of the severest. */
export function noticedAtWorst(rig: Rig, { nodes }: Strata): Noticed {
  const noticed = emptyNoticed(rig);
  count(noticed, storedAt(rig, rowsOf(rig, nodes), nodes.length - 1), 1);
  return noticed;
}

/** Complaint by its index, and which of the rig's codes are stored. */
interface Stored {
  complaint: number;
  codes: readonly number[];
}

function emptyNoticed({ codes }: Rig): Noticed {
  return { complaint: new Float64Array(NOTHING + 1), codes: new Float64Array(codes.length) };
}

function count(noticed: Noticed, { complaint, codes }: Stored, amount: number): void {
  noticed.complaint[complaint] = (noticed.complaint[complaint] as number) + amount;
  for (const code of codes) noticed.codes[code] = (noticed.codes[code] as number) + amount;
}

/** One value that complaints and codes are read off, at every solved severity. */
interface Row {
  condition: SteadyConditionId;
  key: string;
  values: Float64Array;
}

function rowsOf(rig: Rig, nodes: readonly RigState[]): Row[] {
  const looked = [
    ...complaintValues,
    ...rig.codes.map(({ condition, value }): [SteadyConditionId, string] => [condition, value]),
  ];
  return looked.map(([condition, key]) => {
    const values = new Float64Array(nodes.length);
    // What a point does not have is never there, such as the time to enable an engine that does not start.
    nodes.forEach(({ points }, node) => {
      values[node] = points[condition].values[key] ?? Number.POSITIVE_INFINITY;
    });
    return { condition, key, values };
  });
}

/** @param place  Counted in solved severities from the mildest. */
function storedAt(rig: Rig, rows: readonly Row[], place: number): Stored {
  const points = emptyPoints();
  const last = (rows[0]?.values.length ?? 1) - 1;
  const lower = Math.min(Math.max(0, last - 1), Math.floor(place));
  for (const { condition, key, values } of rows) {
    // A yes or no has nothing in between.
    const value =
      key === 'willStart' ? (values[Math.round(place)] as number) : interpolate(values, lower, place - lower);
    if (Number.isFinite(value)) points[condition].values[key] = value;
  }
  const codes = troubleCodes(rig, points);
  const complaint = complaintOf(rig, points, codes);
  return {
    complaint: complaint ? complaintIds.indexOf(complaint) : NOTHING,
    codes: rig.codes.flatMap((code, index) => (codes.length > 0 && holds(codes, code) ? [index] : [])),
  };
}

function emptyPoints(): OperatingPoints {
  const none = () => ({ pressures: {}, temperatures: {}, flows: {}, values: {} });
  return {
    'key-on': none(),
    cranking: none(),
    idle: none(),
    'high-idle': none(),
    'full-load': none(),
    'key-off': none(),
  };
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
