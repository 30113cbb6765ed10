import type { Check } from '../../../checks/check';
import type { LimitLine } from '../../../rig/rig';
import type { Line } from '../../line';
import { limitWords } from '../../shared/limit-words';

/** What is measured in a line of the sheet: the check, with the quantity where it has several. */
export function measuredWords({ id, quantities }: Check, quantity: string): Line {
  return {
    say: quantities.length > 1 ? 'oneOfCheck' : 'check',
    with: { check: { name: 'check', id }, quantity: { name: 'check-quantity', id: quantity, of: id } },
  };
}

/** A line of the sheet, as an option or, with its ends changed, as one that is not on it. */
export function lineWords(
  check: Check,
  { quantity, condition, ...ends }: Pick<LimitLine, 'quantity' | 'condition' | 'min' | 'max' | 'unit'>,
): Line {
  return {
    say: 'line',
    with: {
      measured: { line: measuredWords(check, quantity) },
      condition: { name: 'condition', id: condition },
      limit: { line: limitWords(ends) },
    },
  };
}
