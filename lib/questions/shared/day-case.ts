import type { Measurable } from '../../cases/perform-check';
import type { Catalogue } from '../../catalogue';
import { Ground } from '../../diagnosis/ground';
import { type Known, Particles } from '../../diagnosis/particles';
import { conditionIds } from '../../rig/condition';
import { complaintOf, conditionsReachable } from '../../symptoms/complaint';
import { troubleCodes } from '../../symptoms/trouble-codes';
import { brokenOn, type Fault } from './broken-day';
import type { RigDay } from './rig-day';

/** A broken rig on one of its days, as somebody finds it: with its complaint and codes, and all that they leave possible. */
export interface DayCase extends Measurable {
  rig: Known['rig'];
  setting: Known['setting'];
  points: Known['points'];
  spec: { seed: string };
  workOrder: Known['workOrder'];
  particles: Particles;
}

const grounds = new WeakMap<RigDay, Ground>();
const believed = new WeakMap<RigDay, Map<string, Particles>>();

/**
 * A fault on a day; undefined where nobody would notice it.
 *
 * @param seed  Of the instruments' own errors.
 */
export function dayCase(day: RigDay, fault: Fault, seed: string, catalogue: Catalogue): DayCase | undefined {
  const found = foundOn(day, fault, catalogue);
  return found && { ...found, spec: { seed } };
}

type Found = Omit<DayCase, 'spec'>;

const founds = new WeakMap<RigDay, Map<string, Found | undefined>>();

/** Kept: whoever draws the same fault finds the same. */
function foundOn(day: RigDay, fault: Fault, catalogue: Catalogue): Found | undefined {
  const known = founds.get(day) ?? new Map<string, Found | undefined>();
  founds.set(day, known);
  const name = `${fault.cause.id} ${fault.severity}`;
  if (!known.has(name)) known.set(name, find(day, fault, catalogue));
  return known.get(name);
}

function find(day: RigDay, fault: Fault, catalogue: Catalogue): Found | undefined {
  const { rig, setting } = day;
  const { points, traces } = brokenOn(day, fault);
  const codes = troubleCodes(rig, points);
  const complaint = complaintOf(rig, points, codes);
  if (!complaint) return undefined;
  const found = { rig, setting, points, workOrder: { complaint, codes } };
  return { ...found, traces, particles: particlesOn(day, { ...found, spec: {} }, catalogue) };
}

/** Work orders that say the same, of engines that reach the same conditions, share their particles. */
function particlesOn(day: RigDay, found: Known, catalogue: Catalogue): Particles {
  const known = believed.get(day) ?? new Map<string, Particles>();
  believed.set(day, known);
  const { complaint, codes } = found.workOrder;
  const key = JSON.stringify([complaint, codes, conditionsReachable(found.points, conditionIds)]);
  const particles = known.get(key) ?? new Particles(found, catalogue, groundOf(day, catalogue));
  known.set(key, particles);
  return particles;
}

function groundOf(day: RigDay, catalogue: Catalogue): Ground {
  const ground = grounds.get(day) ?? new Ground(day.rig, day.setting, catalogue).solveAll();
  grounds.set(day, ground);
  return ground;
}
