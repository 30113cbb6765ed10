import type { DescribedCase, DescribedReading } from '@/lib/cases/describe-case';
import type { Catalogue } from '@/lib/catalogue';
import type { Features } from '@/lib/diagnosis/difficulty';
import type { RouteStep } from '@/lib/diagnosis/next-check';

/** What the expert makes of a case. */
export interface CertifiedFields {
  /** Logits. */
  difficulty: number;
  features: Features;
  expertRoute: readonly RouteStep[];
  /** `right` is the belief in the right repair that the expert ends with. */
  certificate: { settled: boolean; right: number; minutes: number };
}

/** A case in English, for a person at a terminal. Shows the truth. */
export function printCase(described: DescribedCase & CertifiedFields, { causes }: Catalogue): string {
  const truth = described.causes.map(
    ({ id, severity }) => `${causes.get(id)?.text.en.name ?? id}, severity ${severity}`,
  );
  return [
    `Case ${described.caseCode} on ${described.rig}, seed ${described.seed}`,
    `Truth: ${truth.join('; ')}`,
    `Complaint: ${described.complaint}`,
    ...described.codes.map(({ spn, fmi, text }) => `Code: SPN ${spn} FMI ${fmi}, ${text}`),
    ...certificateLines(described),
    ...described.readings.map(readingLine),
  ].join('\n');
}

function certificateLines({ difficulty, expertRoute, certificate: { settled, right, minutes } }: CertifiedFields) {
  const steps = expertRoute.map(({ check, condition, instrument }) => `${check} @ ${condition} with ${instrument}`);
  return [
    `Difficulty: ${difficulty} logits`,
    `${settled ? 'Settled' : 'Not settled'}: ${(100 * right).toFixed(1)} % on the right repair after ${minutes} min`,
    `Expert: ${steps.join('; ')}`,
  ];
}

function readingLine({ check, condition, quantity, value, unit, limit, verdict }: DescribedReading): string {
  const bounds = limit ? `${limit.min ?? ''}…${limit.max ?? ''} ${limit.unit}` : 'no limit';
  const name = check === quantity ? check : `${check} ${quantity}`;
  return `${`${name} @ ${condition}`.padEnd(58)} ${`${value ?? 'gauge lost'} ${unit}`.padStart(14)}   ${bounds.padStart(18)}   ${verdict ?? ''}`;
}
