import { z } from 'zod';
import { unitChoices } from './unit-choices';

export const dateFormats = ['day-month-year', 'month-day-year', 'year-month-day'] as const;
export type DateFormat = (typeof dateFormats)[number];

const percent = z.number().int().min(0).max(100);

/** What an organisation settles for itself. */
export const settingsSchema = z.strictObject({
  /** Units of people who have not chosen their own. */
  units: z.enum(unitChoices),
  dateFormat: z.enum(dateFormats),
  /** IANA name, such as `America/Chicago`. */
  timeZone: z.string().min(1).max(64),
  /** Days after which a piece of evidence counts half. */
  evidenceHalfLifeDays: z.number().int().min(7).max(3650),
  /** Points out of 100 from which a case counts as passed. */
  passMarks: z.strictObject({ practice: percent, assessed: percent }),
});

export type OrganizationSettings = z.infer<typeof settingsSchema>;

/** Assumed: marks as vocational courses commonly ask, evidence that halves in half a year. */
export const usualSettings: OrganizationSettings = {
  units: 'kpa-c',
  dateFormat: 'year-month-day',
  timeZone: 'UTC',
  evidenceHalfLifeDays: 180,
  passMarks: { practice: 60, assessed: 75 },
};
