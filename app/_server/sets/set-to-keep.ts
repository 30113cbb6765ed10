import type { FieldFault } from '@/app/questions/draft-answer';
import type { SetBody } from '@/lib/sets/set-body';
import { lookOver } from './look-over';
import { parseSet } from './parse-set';

/**
 * The set that an editor's draft comes to, where all of it can be drawn and every written question is a live one of the
 * organisation's: whoever it is assigned to is asked whatever it names.
 *
 * @returns undefined for what no editor sends; what is wrong at which field where it cannot be kept as it stands.
 */
export async function setToKeep(
  json: unknown,
  organizationId: string,
): Promise<{ body: SetBody } | { faults: readonly FieldFault[] } | undefined> {
  const parsed = await parseSet(json);
  if (!parsed || 'faults' in parsed) return parsed;
  const { faults } = await lookOver(parsed.body, organizationId);
  return faults.length > 0 ? { faults } : parsed;
}
