import type { Catalogue } from '../catalogue';
import { applyCause } from '../faults/apply-cause';
import type { Cause } from '../faults/cause';
import { type RandomStream, randomStream } from '../random';
import { type OperatingPoints, operatingPoints } from '../rig/operating-point';
import type { Rig } from '../rig/rig';
import type { Setting } from '../rig/setting';
import { complaintOf } from '../symptoms/complaint';
import { troubleCodes } from '../symptoms/trouble-codes';
import {
  type ComplaintId,
  STORIES_PER_COMPLAINT,
  type TroubleCode,
  vehicleIds,
  type WorkOrder,
} from '../symptoms/work-order';
import { ZERO_CELSIUS } from '../units';
import { type Case, GENERATOR_VERSION } from './case';
import { type CaseSpec, formatCaseCode } from './case-code';

/** How often a milder draw than a driver would notice is drawn again before the severest is taken. */
const SEVERITY_DRAWS = 6;
/** What is said of a vehicle in which nothing about the fuel system can be noticed. */
const UNFOUNDED: readonly ComplaintId[] = ['lacks-power', 'starts-slowly', 'hunts'];

/**
 * The case that a spec stands for: the same on any machine for the same content and generator version.
 *
 * The complaint and the codes follow from the computed state. Each draw has a stream of its own, so that adding one
 * moves no other.
 *
 * @throws RangeError when the spec names a rig or cause that content does not have.
 * @throws SolveError when the broken rig has no steady state; 2,000 seeds show none that has not.
 */
export function caseFromSeed(spec: CaseSpec, catalogue: Catalogue): Case {
  const rig = known(catalogue.rigs, spec.rig, 'rig');
  const setting = drawSetting(rig, spec.seed);
  const { cause, severity, points } = spec.chosen
    ? broken(rig, setting, catalogue, known(catalogue.causes, spec.chosen.cause, 'cause'), spec.chosen.severity / 1000)
    : drawBroken(rig, setting, catalogue, spec.seed);
  const codes = troubleCodes(rig, points);
  return {
    code: formatCaseCode(spec),
    spec,
    generatorVersion: GENERATOR_VERSION,
    contentHash: catalogue.contentHash,
    rig,
    setting,
    truth: { cause: cause.id, severity },
    workOrder: writeWorkOrder(spec.seed, complaintOf(rig, points, codes), codes),
    points,
  };
}

function drawSetting({ settings }: Rig, seed: string): Setting {
  const draw = (name: string, [min, max]: readonly [number, number], step: number) =>
    Number((Math.round(randomStream(seed, `setting ${name}`).between(min, max) / step) * step).toFixed(2));
  return {
    airTemperature: draw('air', settings.airC, 1) + ZERO_CELSIUS,
    altitude: draw('altitude', settings.altitudeM, 10),
    fuel: randomStream(seed, 'setting fuel').pick(settings.fuels),
    supplyFilterAge: draw('supply filter age', settings.filterAge, 0.05),
    mainFilterAge: draw('main filter age', settings.filterAge, 0.05),
    tankLevel: draw('tank level', settings.tankLevel, 0.05),
  };
}

interface Broken {
  cause: Cause;
  severity: number;
  points: OperatingPoints;
}

/** Draws cause and severity until a driver would notice. */
function drawBroken(rig: Rig, setting: Setting, catalogue: Catalogue, seed: string): Broken {
  const cause = randomStream(seed, 'cause').pick([...catalogue.causes.values()], ({ weight }) => weight);
  const severities = randomStream(seed, 'severity');
  for (let draw = 0; draw < SEVERITY_DRAWS; draw++) {
    const found = broken(rig, setting, catalogue, cause, drawSeverity(severities, cause));
    if (noticed(rig, found.points) || cause.effects.length === 0) return found;
  }
  return broken(rig, setting, catalogue, cause, cause.severity.max);
}

/** In thousandths, as case codes carry it. */
function drawSeverity(stream: RandomStream, { severity }: Cause): number {
  return Math.round(stream.between(severity.min, severity.max) * 1000) / 1000;
}

function broken(rig: Rig, setting: Setting, catalogue: Catalogue, cause: Cause, severity: number): Broken {
  const fuel = known(catalogue.fuels, setting.fuel, 'fuel');
  return { cause, severity, points: operatingPoints(applyCause(rig, cause, severity), setting, fuel) };
}

function noticed(rig: Rig, points: OperatingPoints): boolean {
  return complaintOf(rig, points, troubleCodes(rig, points)) !== undefined;
}

function writeWorkOrder(seed: string, computed: ComplaintId | undefined, codes: readonly TroubleCode[]): WorkOrder {
  const complaint = computed ?? randomStream(seed, 'unfounded complaint').pick(UNFOUNDED);
  const story = 1 + Math.floor(randomStream(seed, 'story').between(0, STORIES_PER_COMPLAINT));
  return {
    complaint,
    vehicle: randomStream(seed, 'vehicle').pick(vehicleIds),
    odometerKm: Math.round(randomStream(seed, 'odometer').between(400, 9000)) * 100,
    story: `${complaint}-${story}`,
    codes,
  };
}

function known<T>(items: ReadonlyMap<string, T>, id: string, kind: string): T {
  const item = items.get(id);
  if (item === undefined) throw new RangeError(`Content has no ${kind} ${id}`);
  return item;
}
