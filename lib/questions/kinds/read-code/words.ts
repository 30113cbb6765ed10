import type { TroubleCode } from '../../../symptoms/work-order';
import type { Line, Value } from '../../line';

export const ELECTRICAL = 'electrical-supply-sensors-and-codes';
export const REASONING = 'reasoning-and-repair-proof';

/** A code with what it says: the line `code`. */
export function codeLine({ spn, fmi }: TroubleCode): Line {
  return {
    say: 'code',
    with: {
      spn: String(spn),
      fmi: String(fmi),
      parameter: { name: 'spn', id: String(spn) },
      mode: { name: 'fmi', id: String(fmi) },
    },
  };
}

export function rigName(id: string): Value {
  return { name: 'rig', id };
}

export function causeName(id: string): Value {
  return { name: 'cause', id };
}
