import type { Catalogue } from '../catalogue';
import { applyCause, canHappen } from '../faults/apply-cause';
import type { Cause } from '../faults/cause';
import { type RandomStream, randomStream } from '../random';
import { elementOfKind, type Rig } from '../rig/rig';
import { type RigState, rigState } from '../rig/rig-state';
import type { Setting } from '../rig/setting';
import { complaintOf, unfoundedComplaints } from '../symptoms/complaint';
import { troubleCodes } from '../symptoms/trouble-codes';
import {
  type ComplaintId,
  STORIES_PER_COMPLAINT,
  type TroubleCode,
  vehicleIds,
  type WorkOrder,
} from '../symptoms/work-order';
import { ZERO_CELSIUS } from '../units';
import { type Case, GENERATOR_VERSION, type Truth } from './case';
import { type CaseSpec, formatCaseCode } from './case-code';

/** How often a milder draw than a driver would notice is drawn again before the severest is taken. */
export const SEVERITY_DRAWS = 6;
/** How often the hardest level draws two causes, where there are two that go together. */
export const DOUBLE_SHARE = 0.6;
/** Fuel is delivered so much clear of its cloud point. */
const CLOUD_MARGIN = 3;

/**
 * The case that a spec stands for: the same on any machine for the same content and generator version.
 *
 * The complaint and the codes follow from the computed state. Each draw has a stream of its own, so that adding one
 * moves no other.
 *
 * @throws RangeError when the spec names a rig or cause that content does not have, or a cause that the rig cannot have.
 * @throws SolveError when the broken rig has no steady state; 20,000 seeds show none that has not.
 */
export function caseFromSeed(spec: CaseSpec, catalogue: Catalogue): Case {
  const rig = known(catalogue.rigs, spec.rig, 'rig');
  const setting = drawSetting(rig, spec.seed, catalogue);
  const { truth, state } = spec.chosen ? chosen(rig, setting, catalogue, spec) : drawn(rig, setting, catalogue, spec);
  const codes = troubleCodes(rig, state.points);
  return {
    code: formatCaseCode(spec),
    spec,
    generatorVersion: GENERATOR_VERSION,
    contentHash: catalogue.contentHash,
    rig,
    setting,
    truth,
    workOrder: writeWorkOrder(spec.seed, complaintOf(rig, state.points, codes), codes),
    ...state,
  };
}

/** The weather, the fuel and the filters of the day that a seed stands for. */
export function drawSetting(rig: Rig, seed: string, { fuels }: Pick<Catalogue, 'fuels'>): Setting {
  const { settings } = rig;
  const draw = (name: string, [min, max]: readonly [number, number], step: number) =>
    Number((Math.round(randomStream(seed, `setting ${name}`).between(min, max) / step) * step).toFixed(2));
  const airC = draw('air', settings.airC, 1);
  // Nobody is sold a fuel that clouds in the weather of the day.
  const clear = settings.fuels.filter((id) => known(fuels, id, 'fuel').cloudPointC <= airC - CLOUD_MARGIN);
  return {
    airTemperature: airC + ZERO_CELSIUS,
    altitude: draw('altitude', settings.altitudeM, 10),
    fuel: randomStream(seed, 'setting fuel').pick(clear.length > 0 ? clear : settings.fuels),
    supplyFilterAge: draw('supply filter age', settings.filterAge, 0.05),
    mainFilterAge: draw('main filter age', settings.filterAge, 0.05),
    tankLevel: draw('tank level', settings.tankLevel, 0.05),
    hoursStanding: draw('hours standing', settings.hoursStanding, 1),
    cylinder: 1 + Math.floor(elementOfKind(rig, 'injector-return').cylinders * randomStream(seed, 'cylinder').next()),
  };
}

interface Broken {
  truth: Truth;
  state: RigState;
}

/** A cause and its severity, 0…1. */
interface Fault {
  cause: Cause;
  severity: number;
}

function chosen(rig: Rig, setting: Setting, catalogue: Catalogue, spec: CaseSpec): Broken {
  const faults = [spec.chosen, spec.also].flatMap((choice) =>
    choice ? [{ cause: known(catalogue.causes, choice.cause, 'cause'), severity: choice.severity / 1000 }] : [],
  );
  return broken(rig, setting, catalogue, faults);
}

/** Draws what is wrong until a driver would notice, first more of it, then something else. */
function drawn(rig: Rig, setting: Setting, catalogue: Catalogue, { seed, hardest }: CaseSpec): Broken {
  const happens = [...catalogue.causes.values()].filter((cause) => canHappen(rig, cause, setting));
  const causes = randomStream(seed, 'cause');
  const severities = randomStream(seed, 'severity');
  for (let possible = happens; ; ) {
    const cause = causes.pick(possible, ({ weight }) => weight);
    const second = hardest ? drawSecond(seed, cause, happens) : [];
    for (const severity of severitiesOf(severities, cause)) {
      const found = broken(rig, setting, catalogue, [{ cause, severity }, ...second]);
      if (noticed(rig, found.state) || cause.effects.length === 0) return found;
    }
    possible = possible.filter((other) => other !== cause);
  }
}

/** Severities to try, each as drawn, and the severest at last. */
function* severitiesOf(stream: RandomStream, cause: Cause): Generator<number> {
  for (let draw = 0; draw < SEVERITY_DRAWS; draw++) yield drawSeverity(stream, cause);
  yield cause.severity.max;
}

/** A second cause that has nothing to do with the first: another part, in another area. Often there is none. */
function drawSecond(seed: string, first: Cause, possible: readonly Cause[]): Fault[] {
  const stream = randomStream(seed, 'second cause');
  const others = possible.filter((other) => independent(first, other));
  if (others.length === 0 || stream.next() >= DOUBLE_SHARE) return [];
  const cause = stream.pick(others, ({ weight }) => weight);
  return [{ cause, severity: drawSeverity(stream, cause) }];
}

/** Whether two causes have nothing to do with each other, so that they may be drawn together. */
export function independent(first: Cause, second: Cause): boolean {
  if (first.effects.length === 0 || second.effects.length === 0) return false;
  return first.element !== second.element && first.area !== second.area;
}

/** In thousandths, as case codes carry it. */
function drawSeverity(stream: RandomStream, { severity }: Cause): number {
  return Math.round(stream.between(severity.min, severity.max) * 1000) / 1000;
}

function broken(rig: Rig, setting: Setting, catalogue: Catalogue, faults: readonly Fault[]): Broken {
  const fuel = known(catalogue.fuels, setting.fuel, 'fuel');
  const [first, second] = faults;
  if (!first) throw new RangeError('A case needs a cause');
  const rigAtFault = faults.reduce((found, { cause, severity }) => applyCause(found, cause, severity), rig);
  return {
    truth: {
      cause: first.cause.id,
      severity: first.severity,
      ...(second && { also: { cause: second.cause.id, severity: second.severity } }),
    },
    state: rigState(rigAtFault, setting, fuel),
  };
}

function noticed(rig: Rig, { points }: RigState): boolean {
  return complaintOf(rig, points, troubleCodes(rig, points)) !== undefined;
}

function writeWorkOrder(seed: string, computed: ComplaintId | undefined, codes: readonly TroubleCode[]): WorkOrder {
  const complaint = computed ?? randomStream(seed, 'unfounded complaint').pick(unfoundedComplaints);
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
