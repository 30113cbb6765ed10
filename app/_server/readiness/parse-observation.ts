import { z } from 'zod';
import type { ObservedItem } from '@/db/schema/readiness';
import { momentOf } from '@/lib/assignments/local-time';
import type { RoleProfile } from '@/lib/readiness/profile';
import { catalogue } from '../catalogue';
import type { ProblemCode } from '../problems';

/** Points and passing mark of what somebody adds in their own words. */
export const EXTRA = { outOf: 3, pass: 2 } as const;
const MOST_EXTRAS = 12;

/** What somebody was seen doing. */
export interface Observed {
  items: readonly ObservedItem[];
  unsafe: boolean;
  comment: string;
  observedAt: Date;
}

const factsSchema = z.object({
  comment: z.string().trim().min(1).max(1000),
  observedOn: z.string().regex(/^\d{4}-\d{2}-\d{2}$/),
  unsafe: z.literal('yes').optional(),
});
const points = z.string().regex(/^\d$/).transform(Number);

/** A hands-on check out of its form; the code of a problem where something is missing or cannot be. */
export function parseObservation(
  form: FormData,
  profile: RoleProfile,
  { timeZone, now }: { timeZone: string; now: Date },
): Observed | { problem: ProblemCode } {
  const facts = factsSchema.safeParse(Object.fromEntries(form));
  if (!facts.success)
    return {
      problem: facts.error.issues.some(({ path }) => path[0] === 'observedOn')
        ? 'observation-date'
        : 'observation-incomplete',
    };
  const { comment, observedOn, unsafe } = facts.data;
  const observedAt = momentOn(observedOn, timeZone, now);
  if (!observedAt) return { problem: 'observation-date' };
  const asked = (profile.handsOn ?? []).map((item) => askedItem(item, form.get(`score-${item.id}`)));
  if (!asked.every((item) => item !== undefined)) return { problem: 'observation-incomplete' };
  const extras = extraItems(form);
  if (!extras) return { problem: 'observation-extra' };
  const items = [...asked, ...extras];
  if (items.length === 0) return { problem: 'observation-empty' };
  return { items, unsafe: unsafe === 'yes', comment, observedAt };
}

/** Noon of a day where the organisation is, or now on the day itself; undefined for a day that lies ahead or is none. */
function momentOn(day: string, timeZone: string, now: Date): Date | undefined {
  const [noon, start] = [momentOf(`${day}T12:00`, timeZone), momentOf(`${day}T00:00`, timeZone)];
  if (!noon || !start || start.at > now.getTime()) return undefined;
  return new Date(Math.min(noon.at, now.getTime()));
}

function askedItem(
  { id, topic, outOf, pass, text }: NonNullable<RoleProfile['handsOn']>[number],
  given: FormDataEntryValue | null,
): ObservedItem | undefined {
  const score = points.safeParse(given).data;
  if (score === undefined || score > outOf) return undefined;
  return { id, topic, text: text.en, outOf, pass, score };
}

/** Things of somebody's own; undefined where one lacks something. Rows that are left empty are none. */
function extraItems(form: FormData): ObservedItem[] | undefined {
  const [texts, topics, scores] = ['extra-text', 'extra-topic', 'extra-score'].map((name) =>
    form.getAll(name).map(String),
  );
  const rows = (texts ?? []).map((text, index) => ({
    text: text.trim(),
    topic: topics?.[index] ?? '',
    score: scores?.[index] ?? '',
  }));
  const filled = rows.filter(({ text, topic, score }) => text !== '' || topic !== '' || score !== '');
  if (filled.length > MOST_EXTRAS) return undefined;
  const items = filled.map(({ text, topic, score }, index): ObservedItem | undefined => {
    const given = points.safeParse(score).data;
    if (text === '' || text.length > 400 || !catalogue().topics.has(topic)) return undefined;
    if (given === undefined || given > EXTRA.outOf) return undefined;
    return { id: `own-${index + 1}`, topic, text, ...EXTRA, score: given };
  });
  return items.every((item) => item !== undefined) ? items : undefined;
}
