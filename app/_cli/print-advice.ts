import { areas } from '@/lib/areas';
import type { Catalogue } from '@/lib/catalogue';
import type { Shown } from '@/lib/checks/shown';
import type { CheckWorth } from '@/lib/diagnosis/next-check';
import type { Advice } from './advice';

/** Lines of a list that a person cares to read. */
const SHOWN = 8;
/** Less belief than this prints as nothing. */
const VISIBLE = 5e-4;

/** Advice in English, for a person at a terminal. */
export function printAdvice(
  { caseCode, findings, causes, areas: shares, repairs, next }: Advice,
  catalogue: Catalogue,
): string {
  return [
    `Case ${caseCode}`,
    ...findings.map(
      ({ check, condition, instrument, readings }) =>
        `Read: ${check} @ ${condition} with ${instrument}: ${readings.map(readingText).join(', ')}`,
    ),
    'Causes',
    ...causes
      .filter(({ belief }) => belief >= VISIBLE)
      .map(({ id, belief }) => `  ${percent(belief)}  ${catalogue.causes.get(id)?.text.en.name ?? id}`),
    'Areas',
    ...areas.map((area) => `  ${percent(shares[area])}  ${area}`),
    'Repairs, in the order that costs least without another look',
    ...repairs
      .filter(({ belief }) => belief >= VISIBLE)
      .map(({ id, belief, minutes }) => `  ${percent(belief)}  ${id}, ${minutes} min`),
    'Next checks, the most told per minute first',
    ...next.slice(0, SHOWN).map(nextLine),
  ].join('\n');
}

function nextLine({ check, condition, instrument, minutes, gain, perMinute, saves }: CheckWorth): string {
  const name = `${check} @ ${condition}`.padEnd(42);
  const worth = `${gain.toFixed(3)} nats, ${perMinute.toFixed(4)} a minute, saves ${saves.toFixed(1)} min`;
  return `  ${name} ${String(minutes).padStart(3)} min  ${worth}  ${instrument}`;
}

function readingText(shown: Shown): string {
  switch (shown.kind) {
    case 'value':
      return `${shown.quantity} ${shown.value} ${shown.unit}`;
    case 'off-scale':
      return `${shown.quantity} off the scale, ${shown.end} end at ${shown.limit} ${shown.unit}`;
    case 'codes':
      return shown.codes.map(({ spn, fmi }) => `SPN ${spn} FMI ${fmi}`).join(' and ') || 'no codes';
    case 'destroyed':
      return 'gauge destroyed';
    case 'jet':
      return 'a jet of fuel, nothing read';
  }
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1).padStart(5)} %`;
}
