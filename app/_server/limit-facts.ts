import type { Catalogue } from '@/lib/catalogue';
import type { LimitLine } from '@/lib/rig/rig';

/** What is needed to say a limit in words, beyond the line itself. */
export interface LimitFacts {
  vacuum: boolean;
  /** Words for what an eye tells apart, from 0 up. */
  grades: readonly string[] | undefined;
}

/** How the quantity that a line is for is measured and spoken of. */
export function limitFacts(
  { checks }: Catalogue,
  { check, quantity }: Pick<LimitLine, 'check' | 'quantity'>,
): LimitFacts {
  const found = checks.get(check);
  return {
    vacuum: found?.quantities.find(({ id }) => id === quantity)?.measures === 'vacuum',
    grades: found?.text.en.grades?.[quantity],
  };
}
