import type { OperatingPoints } from '../rig/operating-point';
import type { Rig } from '../rig/rig';
import type { Setting } from '../rig/setting';
import type { WorkOrder } from '../symptoms/work-order';
import type { CaseSpec } from './case-code';

/** Moves whenever a change of code moves a reading, a work order or a draw. */
export const GENERATOR_VERSION = 1;

/** A broken rig in its setting, with everything computed from it. Holds the truth: never leaves the server whole. */
export interface Case {
  code: string;
  spec: CaseSpec;
  generatorVersion: number;
  contentHash: string;
  /** The healthy rig: limits, ports and names. */
  rig: Rig;
  setting: Setting;
  truth: { cause: string; severity: number };
  workOrder: WorkOrder;
  points: OperatingPoints;
}
