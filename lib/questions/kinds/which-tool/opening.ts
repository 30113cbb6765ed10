import type { Catalogue } from '../../../catalogue';
import type { Check } from '../../../checks/check';
import { jetFrom } from '../../../checks/jet';
import type { RandomStream } from '../../../random';
import { steadyConditionIds } from '../../../rig/condition';
import type { Rig } from '../../../rig/rig';
import type { Line, Value } from '../../line';
import { checksOn } from '../../shared/checks-on';
import type { RigDay } from '../../shared/rig-day';
import { type Choice, shuffled } from '../../shared/shuffled-options';

/** Checks for which a fitting is loosened that may have pressure behind it. */
export function openingsOn(rig: Rig, catalogue: Catalogue, topic?: string): Check[] {
  return checksOn(rig, catalogue, topic).filter(({ opens }) => opens !== undefined);
}

/** With the engine at rest, as the procedure has it, or with a jet in three other conditions. */
export function openingChoices(day: RigDay, check: Check, stream: RandomStream): Choice[] {
  const jets = steadyConditionIds.flatMap((condition) => {
    const jet = jetFrom(day, check, condition);
    return jet ? [{ line: loosened(condition), because: jetWords(condition, jet) }] : [];
  });
  const safe = check.conditions.slice(0, 1).map((condition) => ({ line: loosened(condition) }));
  return [...safe, ...shuffled(stream, jets).slice(0, 3)];
}

function loosened(condition: string): Line {
  return { say: 'loosened', with: { condition: conditionName(condition) } };
}

/** The fitting, as it is stamped on the drawing and where it sits. */
export function portName({ ports }: Check, rig: string): Value {
  const port = ports[rig]?.[0] ?? '';
  return { line: { say: 'port', with: { port, place: { name: 'port', id: port, of: rig } } } };
}

function jetWords(condition: string, { speed, pressure }: { speed: number; pressure: number }): Line {
  const behind: Value = { quantity: pressure / 1e6, unit: 'MPa' };
  return { say: 'jet', with: { condition: conditionName(condition), speed, pressure: behind } };
}

function conditionName(id: string): Value {
  return { name: 'condition', id };
}
