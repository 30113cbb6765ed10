import type { Case } from '@/lib/cases/case';
import type { AfterRepair } from '@/lib/grading/grade';
import { isSteady, type SteadyConditionId, steadyConditionIds } from '@/lib/rig/condition';
import { type OperatingPoint, operatingPoint } from '@/lib/rig/operating-point';
import { canRun } from '@/lib/symptoms/complaint';
import { catalogue } from './catalogue';

/** Pressure at a port, above the air around, Pa. */
export interface PortPressure {
  port: string;
  name: string;
  /** Null where the broken engine does not get to the condition. */
  before: number | null;
  after: number;
  /** By more than an eye would call the same. */
  moved: boolean;
}

export interface RepairPressures {
  condition: SteadyConditionId;
  /** What may be asked for. */
  conditions: readonly SteadyConditionId[];
  ports: readonly PortPressure[];
}

/** A movement smaller than this share is not pointed out, nor one below what a gauge could show, Pa. */
const VISIBLE = 0.05;
const FEELABLE = 500;

/**
 * True pressures on the broken rig and on the same rig put right, in one condition.
 *
 * @param asked  As it came in; what is no condition asks for the one that tells most.
 */
export function repairPressures(theCase: Case, moved: readonly AfterRepair[], asked: unknown): RepairPressures {
  const condition = steadyConditionIds.find((id) => id === asked) ?? tellingCondition(moved);
  const { rig, setting, points } = theCase;
  const fuel = catalogue().fuels.get(setting.fuel);
  if (!fuel) throw new RangeError(`Content has no fuel ${setting.fuel}`);
  const broken = canRun(points, condition) ? points[condition] : undefined;
  const sound = operatingPoint(rig, setting, fuel, condition);
  return {
    condition,
    conditions: steadyConditionIds,
    ports: gaugePorts(theCase).map(({ id, node, name }) => {
      const [before, after] = [broken ? aboveAmbient(broken, node) : null, aboveAmbient(sound, node)];
      return { port: id, name, before, after, moved: hasMoved(before, after) };
    }),
  };
}

/** Where the repair turns a verdict, if anywhere. */
function tellingCondition(moved: readonly AfterRepair[]): SteadyConditionId {
  for (const { condition, verdictBefore, verdictAfter } of moved)
    if (verdictBefore !== verdictAfter && isSteady(condition)) return condition;
  return 'idle';
}

/** One port a node of the system: of several, the last, as a gauge's stands downstream of a hose's. */
function gaugePorts({ rig }: Case): { id: string; node: string; name: string }[] {
  const fixed = new Set(rig.nodes.filter((node) => node.fixed).map(({ id }) => id));
  const byNode = new Map<string, { id: string; node: string; name: string }>();
  for (const { id, node, text } of rig.ports)
    if (node && !fixed.has(node)) byNode.set(node, { id, node, name: text.en });
  return [...byNode.values()];
}

function aboveAmbient({ pressures, values }: OperatingPoint, node: string): number {
  const [pressure, ambient] = [pressures[node], values.ambientPressure];
  if (pressure === undefined || ambient === undefined) throw new RangeError(`No pressure at ${node}`);
  return pressure - ambient;
}

function hasMoved(before: number | null, after: number): boolean {
  return before === null || Math.abs(after - before) > Math.max(VISIBLE * Math.abs(after), FEELABLE);
}
