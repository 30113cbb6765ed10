import type { Rig } from '../rig/rig';
import type { RigState } from '../rig/rig-state';
import type { Setting } from '../rig/setting';
import type { WorkOrder } from '../symptoms/work-order';
import type { CaseSpec } from './case-code';

/** Moves whenever a change of code moves a reading, a work order or a draw. */
export const GENERATOR_VERSION = 2;

/** What is wrong, and how badly, 0…1. */
export interface Truth {
  cause: string;
  severity: number;
  /** A second, independent cause. */
  also?: { cause: string; severity: number };
}

/** A broken rig in its setting, with everything computed from it. Holds the truth: never leaves the server whole. */
export interface Case extends RigState {
  code: string;
  spec: CaseSpec;
  generatorVersion: number;
  contentHash: string;
  /** The healthy rig: limits, ports and names. */
  rig: Rig;
  setting: Setting;
  truth: Truth;
  workOrder: WorkOrder;
}
