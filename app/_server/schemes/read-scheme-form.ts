import { LONGEST_WORDS, type Scheme, type SchemeWords, schemeSchema, schemeWords } from '@/lib/readiness/scheme';

/** What is wrong with a field. The sentence for it is in `schemes.wrong`. */
export type SchemeWrong = 'missing' | 'too-long' | 'whole' | 'share' | 'date' | 'wait' | 'sum' | 'cut' | 'unusable';
export type SchemeWrongs = Record<string, SchemeWrong>;

/** Longest note on what changed. */
export const LONGEST_NOTE = 1_000;
const LONGEST_NAME = 120;

/**
 * The next version of a scheme out of its form, or everything that is wrong with it, by the name of the field. A cut that is
 * left as it was stays set as it was set; another is one that somebody took to be right, and says why.
 */
export function readSchemeForm(
  form: FormData,
  base: Scheme,
  topics: readonly string[],
): { wrong: SchemeWrongs } | { scheme: Scheme; note: string } {
  const wrong: SchemeWrongs = {};
  const read = fieldsIn(form, wrong);
  const en = Object.fromEntries(schemeWords.map((name) => [name, read.words(name)])) as Record<SchemeWords, string>;
  const note = read.text('note', LONGEST_NOTE);
  const next = {
    ...base,
    version: base.version + 1,
    taskAnalysis: { on: read.date('analysedOn'), reviewMonths: read.whole('reviewMonths', 1, 120) },
    blueprint: blueprintIn(read, topics, wrong),
    cut: cutIn(read, base),
    sitting: { minutes: read.whole('minutes', 10, 480), maximum: read.whole('maximum', 1, 60) },
    confidence: read.whole('confidence', 50, 99) / 100,
    refuse: read.whole('refuse', 1, 50) / 100,
    windowDays: read.whole('windowDays', 1, 3650),
    validMonths: read.whole('validMonths', 1, 240),
    retake: { waitDays: read.days('waitDays'), perYear: read.whole('perYear', 1, 12) },
    appeal: {
      withinDays: read.whole('appealWithin', 1, 365),
      answeredInDays: read.whole('appealAnswered', 1, 365),
    },
    text: { en },
  };
  if (Object.keys(wrong).length > 0) return { wrong };
  const parsed = schemeSchema.safeParse(next);
  return parsed.success ? { scheme: parsed.data, note } : { wrong: { note: 'unusable' } };
}

type Fields = ReturnType<typeof fieldsIn>;

function blueprintIn(read: Fields, topics: readonly string[], wrong: SchemeWrongs): Scheme['blueprint'] {
  const rows = topics.map((topic) => ({
    topic,
    share: read.whole(`share.${topic}`, 0, 100) / 100,
    atLeast: read.whole(`atLeast.${topic}`, 0, 60),
  }));
  const sum = rows.reduce((all, { share }) => all + share, 0);
  if (Math.abs(sum - 1) > 0.001) wrong.blueprint = 'sum';
  return rows.filter(({ share, atLeast }) => share > 0 || atLeast > 0);
}

function cutIn(read: Fields, { cut }: Scheme): Scheme['cut'] {
  const ability = read.decimal('ability', -4, 4);
  if (Math.abs(ability - cut.ability) < 0.005) return cut;
  return { ability, standardError: null, setBy: { kind: 'assumed', because: read.text('because', LONGEST_WORDS) } };
}

function fieldsIn(form: FormData, wrong: SchemeWrongs) {
  const raw = (name: string) => {
    const value = form.get(name);
    return typeof value === 'string' ? value.trim().replaceAll('\r\n', '\n') : '';
  };
  const text = (name: string, longest: number) => {
    const value = raw(name);
    if (value === '') wrong[name] = 'missing';
    if (value.length > longest) wrong[name] = 'too-long';
    return value;
  };
  return {
    text,
    words: (name: SchemeWords) => text(name, name === 'name' ? LONGEST_NAME : LONGEST_WORDS),
    whole(name: string, from: number, to: number): number {
      const value = /^\d{1,4}$/.test(raw(name)) ? Number(raw(name)) : Number.NaN;
      if (!(value >= from && value <= to)) wrong[name] = name.startsWith('share.') ? 'share' : 'whole';
      return value;
    },
    decimal(name: string, from: number, to: number): number {
      const typed = raw(name).replace('−', '-');
      const value = /^-?\d{1,2}(\.\d{1,4})?$/.test(typed) ? Number(typed) : Number.NaN;
      if (!(value >= from && value <= to)) wrong[name] = 'cut';
      return value;
    },
    date(name: string): string {
      const value = raw(name);
      if (!/^\d{4}-\d{2}-\d{2}$/.test(value) || Number.isNaN(Date.parse(value))) wrong[name] = 'date';
      return value;
    },
    /** Whole numbers with commas between, at most six. */
    days(name: string): number[] {
      const parts = raw(name).split(/\s*,\s*/);
      if (parts.length > 6 || !parts.every((part) => /^\d{1,3}$/.test(part))) wrong[name] = 'wait';
      return parts.map(Number);
    },
  };
}
