import { getTranslations } from 'next-intl/server';
import { z } from 'zod';
import { numberFields, type ProfileDraft } from '@/app/profiles/editor/draft';
import type { FieldFault } from '@/app/questions/draft-answer';
import { type RoleProfile, roleProfileSchema } from '@/lib/readiness/profile';
import { idSchema } from '@/lib/source';
import { catalogue } from '../catalogue';
import { parseDecimal } from '../parse-decimal';

/** Longer than anything that is taken; what it is too long for is said below. */
const typed = z.string().max(2000);
const LONGEST_NAME = 80;
const LONGEST_TEXT = 400;

const draftSchema: z.ZodType<ProfileDraft> = z.strictObject({
  name: typed,
  about: typed,
  refuse: typed,
  minimum: typed,
  maximum: typed,
  clean: typed,
  atLeast: typed,
  recentDays: typed,
  validMonths: typed,
  minutes: typed,
  topics: z.array(z.strictObject({ id: idSchema.max(80), topic: typed, cut: typed, confidence: typed })).max(30),
  handsOn: z
    .array(z.strictObject({ id: idSchema.max(80), topic: typed, text: typed, outOf: typed, pass: typed }))
    .max(30),
});

/** What a draft is written for. */
type Written = Pick<RoleProfile, 'id' | 'version' | 'source'>;

/**
 * The role profile that an editor's draft comes to.
 *
 * @returns undefined for what no editor sends; what is wrong at which field where it cannot be kept as it stands.
 */
export async function parseProfile(
  json: unknown,
  written: Written,
): Promise<{ profile: RoleProfile } | { faults: FieldFault[] } | undefined> {
  const draft = draftSchema.safeParse(parseJson(json));
  if (!draft.success) return undefined;
  const parsed = roleProfileSchema.safeParse(candidateFrom(draft.data, written));
  const wrong = [
    ...placesOf(parsed.error?.issues ?? [], draft.data),
    ...unknownTopics(draft.data),
    ...tooLong(draft.data),
  ];
  if (parsed.success && wrong.length === 0) return { profile: parsed.data };
  const t = await getTranslations('profiles.faults');
  const texts = new Map(wrong.map(({ at, field }) => [at, t(field)]));
  return { faults: [...texts].map(([at, text]) => ({ at, text })) };
}

function parseJson(json: unknown): unknown {
  try {
    return typeof json === 'string' ? JSON.parse(json) : undefined;
  } catch {
    return undefined;
  }
}

function candidateFrom(draft: ProfileDraft, written: Written): unknown {
  const { name, about, topics, handsOn, clean, atLeast } = draft;
  return {
    ...written,
    ...Object.fromEntries(numberFields.map((field) => [field, number(draft[field])])),
    safety: { clean: number(clean), atLeast: number(atLeast) },
    topics: topics.map(({ topic, cut, confidence }) => ({ topic, cut: number(cut), confidence: number(confidence) })),
    handsOn:
      handsOn.length === 0
        ? null
        : handsOn.map(({ id, topic, text, outOf, pass }) => ({
            id,
            topic,
            outOf: number(outOf),
            pass: number(pass),
            text: { en: text.trim() },
          })),
    text: { en: { name: name.trim(), about: about.trim() } },
  };
}

/** What is no number stays as it was typed, for the schema to refuse. */
function number(text: string): unknown {
  const value = parseDecimal(text);
  return typeof value === 'number' ? value : text;
}

const fields = [
  'name',
  'about',
  'topic',
  'cut',
  'confidence',
  'text',
  'outOf',
  'pass',
  'clean',
  'atLeast',
  'topics',
  'handsOn',
  ...numberFields,
] as const;

interface Place {
  at: string;
  field: (typeof fields)[number];
}

function placesOf(issues: readonly z.core.$ZodIssue[], draft: ProfileDraft): Place[] {
  return issues.flatMap(({ path }) => {
    const names = path.map(String);
    // A row's own words lie one level deeper, the profile's two.
    const last = names.at(-1) === 'en' ? names.at(-2) : names.at(-1);
    const field = fields.find((one) => one === last);
    if (!field) return [];
    const [list, index] = path;
    const row = (list === 'topics' || list === 'handsOn') && typeof index === 'number' ? draft[list][index] : undefined;
    return [{ at: row ? `${String(list)}.${row.id}.${field}` : field, field }];
  });
}

function unknownTopics({ topics, handsOn }: ProfileDraft): Place[] {
  const strange = ({ topic }: { topic: string }) => !catalogue().topics.has(topic);
  return [
    ...topics.filter(strange).map(({ id }): Place => ({ at: `topics.${id}.topic`, field: 'topic' })),
    ...handsOn.filter(strange).map(({ id }): Place => ({ at: `handsOn.${id}.topic`, field: 'topic' })),
  ];
}

function tooLong({ name, about, handsOn }: ProfileDraft): Place[] {
  return [
    ...(name.length > LONGEST_NAME ? [{ at: 'name', field: 'name' } as const] : []),
    ...(about.length > LONGEST_TEXT ? [{ at: 'about', field: 'about' } as const] : []),
    ...handsOn
      .filter(({ text }) => text.length > LONGEST_TEXT)
      .map(({ id }): Place => ({ at: `handsOn.${id}.text`, field: 'text' })),
  ];
}
