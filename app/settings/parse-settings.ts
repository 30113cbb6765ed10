import { type OrganizationSettings, settingsSchema } from '@/lib/accounts/settings';
import { timeZones } from './time-zones';

/** Longest name that an organisation may have. */
export const LONGEST_NAME = 80;

/** What an organisation can settle, as the log tells of it. */
export const settled = [
  'name',
  'units',
  'dateFormat',
  'timeZone',
  'evidenceHalfLifeDays',
  'practice',
  'assessed',
] as const;
export type Settled = (typeof settled)[number];

export interface SettingsChange {
  name: string;
  settings: OrganizationSettings;
}

/**
 * An organisation's name and settings out of a form.
 *
 * @param before  What counts now.
 * @returns the first field that will not do, when one will not.
 */
export function parseSettings(
  form: Readonly<Record<string, unknown>>,
  before: OrganizationSettings,
): SettingsChange | { wrong: Settled } {
  const name = String(form.name ?? '').trim();
  if (name.length === 0 || name.length > LONGEST_NAME) return { wrong: 'name' };
  const parsed = settingsSchema.safeParse({
    units: form.units,
    dateFormat: form.dateFormat,
    timeZone: form.timeZone,
    evidenceHalfLifeDays: wholeNumber(form.evidenceHalfLifeDays),
    passMarks: { practice: wholeNumber(form.practice), assessed: wholeNumber(form.assessed) },
  });
  if (!parsed.success) {
    const field = parsed.error.issues[0]?.path.at(-1);
    return { wrong: settled.find((known) => known === field) ?? 'name' };
  }
  if (!timeZones(before.timeZone).includes(parsed.data.timeZone)) return { wrong: 'timeZone' };
  return { name, settings: parsed.data };
}

/** Which fields two states of an organisation differ in. */
export function changedFields(before: SettingsChange, after: SettingsChange): Settled[] {
  const [was, is] = [flat(before), flat(after)];
  return settled.filter((field) => was[field] !== is[field]);
}

function flat({ name, settings: { passMarks, ...rest } }: SettingsChange): Record<Settled, string | number> {
  return { name, ...rest, ...passMarks };
}

/** As people write it: digits and nothing else. An empty field is no zero. */
function wholeNumber(typed: unknown): number | undefined {
  return typeof typed === 'string' && /^\s*\d{1,6}\s*$/.test(typed) ? Number(typed) : undefined;
}
