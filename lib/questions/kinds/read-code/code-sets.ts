import type { Catalogue } from '../../../catalogue';
import { applyCause } from '../../../faults/apply-cause';
import type { Cause } from '../../../faults/cause';
import { PointsOnDemand } from '../../../rig/points-on-demand';
import type { Rig } from '../../../rig/rig';
import { troubleCodes } from '../../../symptoms/trouble-codes';
import type { TroubleCode } from '../../../symptoms/work-order';
import { causesOn, severitiesOf } from '../../shared/broken-day';
import { DAYS, dayOf, type RigDay } from '../../shared/rig-day';

/** What a cause stores, over its severities and some days. */
export interface Storing {
  cause: Cause;
  /** Suspect parameters that it stores a code of at any severity. */
  spns: ReadonlySet<number>;
}

/** What is stored at one time, by which causes. */
export interface CodeSet {
  codes: readonly TroubleCode[];
  possible: readonly Cause[];
}

export interface CodeSets {
  storing: readonly Storing[];
  sets: readonly CodeSet[];
}

/** Severities at which a cause is looked at; nothing is said of a cause that stores other codes between them. */
const GRID = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
/** How many of the severities of each cause are solved. */
const LEVELS = 4;

const known = new WeakMap<Rig, CodeSets>();

/** What each cause stores on a rig, computed when first asked for. */
export function codeSetsOn(rig: Rig, catalogue: Catalogue): CodeSets {
  const found = known.get(rig) ?? computeSets(rig, catalogue);
  known.set(rig, found);
  return found;
}

/** A lot of codes in the order of the rig's rules. */
function nameOfLot(codes: readonly TroubleCode[]): string {
  return codes.map(({ spn, fmi }) => `${spn}/${fmi}`).join(' ');
}

function computeSets(rig: Rig, catalogue: Catalogue): CodeSets {
  const byName = new Map<string, { codes: TroubleCode[]; possible: Set<Cause> }>();
  for (const { cause, codes } of statesOf(rig, catalogue)) {
    const set = byName.get(nameOfLot(codes)) ?? { codes, possible: new Set() };
    byName.set(nameOfLot(codes), set);
    set.possible.add(cause);
  }
  const sets = [...byName.values()].map(({ codes, possible }) => ({ codes, possible: [...possible] }));
  return {
    storing: storingOn(rig, sets, catalogue),
    sets: sets.filter(({ codes }) => codes.length > 0),
  };
}

/** Of each cause what it stores; at its worst it is looked at on every day, so that what is said never to come does not. */
function storingOn(rig: Rig, sets: readonly CodeSet[], catalogue: Catalogue): Storing[] {
  const spns = new Map<Cause, Set<number>>();
  const add = (cause: Cause, codes: readonly TroubleCode[]) => {
    const known = spns.get(cause) ?? new Set<number>();
    spns.set(cause, known);
    for (const { spn } of codes) known.add(spn);
  };
  for (const { codes, possible } of sets) for (const cause of possible) add(cause, codes);
  const seen = extremesOf(daysOf(rig, catalogue));
  for (const day of daysOf(rig, catalogue).filter((one) => !seen.includes(one)))
    for (const cause of causesOn(day, catalogue)) add(cause, codesOf(day, cause, cause.severity.max));
  return [...spns].map(([cause, stored]) => ({ cause, spns: stored }));
}

function* statesOf(rig: Rig, catalogue: Catalogue): Generator<{ cause: Cause; codes: TroubleCode[] }> {
  for (const day of extremesOf(daysOf(rig, catalogue)))
    for (const cause of causesOn(day, catalogue))
      for (const severity of spread(severitiesOf(cause, GRID))) yield { cause, codes: codesOf(day, cause, severity) };
}

/** Solved from the start, as cases are: some worn pumps settle elsewhere when they set out from a sound rig. */
function codesOf({ rig, setting, fuel }: RigDay, cause: Cause, severity: number): TroubleCode[] {
  return troubleCodes(rig, new PointsOnDemand(applyCause(rig, cause, severity), setting, fuel));
}

function daysOf(rig: Rig, catalogue: Catalogue): RigDay[] {
  return Array.from({ length: DAYS }, (_, number) => dayOf(number, rig, catalogue));
}

/** The coldest day and the warmest: what comes and goes with the weather shows on one of them. */
function extremesOf(days: readonly RigDay[]): RigDay[] {
  const sorted = [...days].sort((one, other) => one.setting.airTemperature - other.setting.airTemperature);
  return [sorted[0], sorted[sorted.length - 1]].filter((day) => day !== undefined);
}

/** Some of a list, its ends among them. */
function spread(severities: readonly number[]): number[] {
  if (severities.length <= LEVELS) return [...severities];
  const last = severities.length - 1;
  return Array.from({ length: LEVELS }, (_, level) => severities[Math.round((level * last) / (LEVELS - 1))] as number);
}
