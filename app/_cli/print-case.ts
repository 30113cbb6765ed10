import type { DescribedCase, DescribedReading } from '@/lib/cases/describe-case';
import type { Catalogue } from '@/lib/catalogue';

/** A case in English, for a person at a terminal. Shows the truth. */
export function printCase(described: DescribedCase, { causes }: Catalogue): string {
  const truth = described.causes.map(
    ({ id, severity }) => `${causes.get(id)?.text.en.name ?? id}, severity ${severity}`,
  );
  return [
    `Case ${described.caseCode} on ${described.rig}, seed ${described.seed}`,
    `Truth: ${truth.join('; ')}`,
    `Complaint: ${described.complaint}`,
    ...described.codes.map(({ spn, fmi, text }) => `Code: SPN ${spn} FMI ${fmi}, ${text}`),
    ...described.readings.map(readingLine),
  ].join('\n');
}

function readingLine({ check, condition, quantity, value, unit, limit, verdict }: DescribedReading): string {
  const bounds = limit ? `${limit.min ?? ''}…${limit.max ?? ''} ${limit.unit}` : 'no limit';
  const name = check === quantity ? check : `${check} ${quantity}`;
  return `${`${name} @ ${condition}`.padEnd(58)} ${`${value ?? 'gauge lost'} ${unit}`.padStart(14)}   ${bounds.padStart(18)}   ${verdict ?? ''}`;
}
