import type { Case } from '@/lib/cases/case';
import type { Certificate } from '@/lib/diagnosis/certificate';

/** A certificate made up without looking: how hard and how long from the seed's symbols, so that it differs by case. */
export function quickCertificate({ spec }: Case, changes: Partial<Certificate> = {}): Certificate {
  const number = [...spec.seed].reduce((sum, symbol) => sum * 7 + symbol.charCodeAt(0), 0);
  return {
    settled: true,
    right: 1,
    route: { steps: [], minutes: 10 + (number % 60), shown: [], beliefs: [], belief: new Float64Array() },
    features: { checks: 1, conditions: 1, closeness: 0, lookAlikes: 0, masked: false },
    difficulty: (number % 41) / 10 - 2,
    ...changes,
  };
}
