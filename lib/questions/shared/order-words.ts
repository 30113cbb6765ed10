import type { Line } from '../line';
import type { DayCase } from './day-case';

/** What a work order says: the line `order-<complaint>` of a kind's words, and `codes` where there are any. */
export function orderWords({ workOrder: { complaint, codes } }: DayCase): Line[] {
  const stored = codes.map(
    ({ spn, fmi }): Line => ({
      say: 'code',
      with: { spn, fmi, parameter: { name: 'spn', id: String(spn) }, mode: { name: 'fmi', id: String(fmi) } },
    }),
  );
  return [
    { say: `order-${complaint}` },
    stored.length > 0
      ? { say: 'codes', with: { codes: { list: stored.map((line) => ({ line })) } } }
      : { say: 'noCodes' },
  ];
}
