import type { OperatingPoints } from '../rig/operating-point';
import type { CodeRule, Rig } from '../rig/rig';
import type { TroubleCode } from './work-order';

/** Trouble codes that a state stores: the first rule of each suspect parameter that holds, in the rig's order. */
export function troubleCodes(rig: Rig, points: OperatingPoints): TroubleCode[] {
  const stored = new Map<number, TroubleCode>();
  for (const rule of rig.codes) {
    if (!stored.has(rule.spn) && holds(rule, points)) stored.set(rule.spn, { spn: rule.spn, fmi: rule.fmi });
  }
  return [...stored.values()];
}

function holds({ condition, value, above, below }: CodeRule, points: OperatingPoints): boolean {
  const actual = points[condition].values[value];
  if (actual === undefined) return false;
  return (above !== undefined && actual > above) || (below !== undefined && actual < below);
}
