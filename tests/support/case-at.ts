import { type Case, GENERATOR_VERSION } from '@/lib/cases/case';
import { applyCause } from '@/lib/faults/apply-cause';
import { rigState } from '@/lib/rig/rig-state';
import type { Setting } from '@/lib/rig/setting';
import { troubleCodes } from '@/lib/symptoms/trouble-codes';
import { aRig, catalogue, causeOf, fuelOf, mildDay } from './bench-rig';

interface Asked {
  rig?: string;
  setting?: Setting;
  cause?: string;
  severity?: number;
  /** Draws the instruments' errors and nothing else. */
  seed?: string;
}

/** A case in a setting of the test's own choosing, where `caseFromSeed` would draw one. Sound unless a cause is named. */
export function caseAt({
  rig: id = 'tern-13',
  setting = mildDay,
  cause,
  severity = 0.8,
  seed = '000000',
}: Asked): Case {
  const rig = aRig(id);
  const state = rigState(cause ? applyCause(rig, causeOf(cause), severity) : rig, setting, fuelOf(setting));
  return {
    code: '000-0000-00',
    spec: { rig: id, seed },
    generatorVersion: GENERATOR_VERSION,
    contentHash: catalogue.contentHash,
    rig,
    setting,
    truth: { cause: cause ?? 'no-fuel-fault', severity: cause ? severity : 0 },
    workOrder: {
      complaint: 'lacks-power',
      vehicle: 'tipper',
      odometerKm: 120_000,
      story: 'lacks-power-1',
      codes: troubleCodes(rig, state.points),
    },
    ...state,
  };
}
