import type { Case } from '@/lib/cases/case';
import { checkHookUp, conditionsOf, type HookUpError } from '@/lib/cases/perform-check';
import type { Catalogue } from '@/lib/catalogue';
import type { Check } from '@/lib/checks/check';
import type { RouteStep } from '@/lib/diagnosis/next-check';
import type { ConditionId } from '@/lib/rig/condition';
import { known, UsageError } from './usage-error';

/** A hook-up as it was asked for on the command line. */
export interface FindingArgument {
  check: string;
  condition: ConditionId;
  instrument: string | undefined;
}

/** Reads `CHECK@CONDITION[@INSTRUMENT]` and says which part of it is wrong. Order is kept; none may be given twice. */
export function findingsFrom(texts: readonly string[], theCase: Case, catalogue: Catalogue): FindingArgument[] {
  const twice = texts.find((text, index) => texts.indexOf(text) !== index);
  if (twice !== undefined) throw new UsageError(`--finding ${twice} is given twice`);
  return texts.map((text) => findingFrom(text, theCase, catalogue));
}

function findingFrom(text: string, theCase: Case, catalogue: Catalogue): FindingArgument {
  const [checkId, conditionId, instrument, ...more] = text.split('@');
  if (!checkId || !conditionId || instrument === '' || more.length > 0) {
    throw new UsageError(`--finding: expected CHECK@CONDITION or CHECK@CONDITION@INSTRUMENT, got ${text}`);
  }
  const check = checkOn(theCase, catalogue, checkId);
  const condition = known(conditionId, conditionsOf(check), `condition of ${checkId}`);
  if (instrument !== undefined) known(instrument, check.instruments, `instrument for ${checkId}`);
  const first = check.instruments[0] ?? '';
  const tried = checkHookUp(theCase, catalogue, { check: checkId, condition, instrument: instrument ?? first });
  if ('error' in tried) throw new UsageError(`--finding ${text}: ${REFUSALS[tried.error]}`);
  return { check: checkId, condition, instrument };
}

function checkOn({ rig }: Case, { checks }: Catalogue, id: string): Check {
  const there = [...checks.values()].filter(({ ports }) => ports[rig.id]);
  const found = known(id, [...checks.keys()], 'check');
  const check = there.find((one) => one.id === found);
  if (!check) throw new UsageError(`--finding: rig ${rig.id} has no port for ${found}`);
  return check;
}

const REFUSALS: Readonly<Record<HookUpError, string>> = {
  'unknown-check': 'no such check',
  'not-on-this-rig': 'the rig has no port for it',
  'condition-not-possible': 'the check cannot be done in that condition',
  'engine-does-not-run': 'the engine of this case does not run so',
  'unknown-instrument': 'no such instrument',
  'instrument-does-not-fit': 'that instrument does not fit the check',
};

/** The one that was named, else what an expert would take now, else the procedure's own. */
export function instrumentFor(
  { checks }: Catalogue,
  { check, condition, instrument }: FindingArgument,
  expert: () => readonly RouteStep[],
): string {
  if (instrument !== undefined) return instrument;
  const step = expert().find((one) => one.check === check && one.condition === condition);
  return step?.instrument ?? checks.get(check)?.instruments[0] ?? '';
}
