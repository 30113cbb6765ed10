import { z } from 'zod';
import type { AnswerChoice, CallChoice } from '@/app/_server/decide-call';
import { type NumberProblem, parseDecimal } from '@/app/_server/parse-decimal';
import { areas } from '@/lib/areas';
import type { HookUp } from '@/lib/cases/perform-check';
import { comparisons, verdicts } from '@/lib/checks/verdict';
import type { FindingAct } from '@/lib/grading/acts';
import { unitNames } from '@/lib/units';

/** Longest words that a finding keeps. */
export const MOST_WORDS = 1000;
/** More steps than this are on no list. */
const MOST_STEPS = 100;
/** Stands in a form for "the sheet has no line for this". */
export const NO_LIMIT = 'none';

const id = z.string().min(1).max(80);
/** Both fields that every act carries. */
const act = { attemptId: id, key: z.string().regex(/^[0-9a-f-]{16,64}$/i) };

const readingSchema = z.object({ ...act, check: id, condition: id, instrument: id });
const findingSchema = z.object({
  ...act,
  reading: z.coerce.number().int().positive(),
  quantity: id,
  value: z.string().max(40).optional(),
  unit: z.enum(unitNames).optional(),
  verdict: z.enum(verdicts),
  comparison: z.enum(comparisons),
  limit: id,
  clears: z.array(z.enum(areas)).max(areas.length),
  suspects: z.array(z.enum(areas)).max(areas.length),
  // Forms send line ends as two characters; people type one.
  words: z
    .string()
    .default('')
    .transform((text) => text.replaceAll('\r\n', '\n').trim()),
});
/** A check and a condition, with a bar between them. */
const proof = z.string().regex(/^[a-z0-9-]{1,80}\|[a-z0-9-]{1,80}$/);
/** A list from which nothing need be chosen. */
const maybe = <T extends z.ZodType>(field: T) => z.union([z.literal(''), field]).default('');
const callSchema = z.object({
  ...act,
  cause: id,
  repair: id,
  proof,
  alsoCause: maybe(id),
  alsoRepair: maybe(id),
  alsoProof: maybe(proof),
  restored: z.array(id).max(MOST_STEPS),
});

interface Missing {
  /** Names of the fields that are missing or not usable. */
  missing: string[];
}

interface ActFields {
  attemptId: string;
  key: string;
}

export function parseReading(form: unknown): (ActFields & { hookUp: HookUp }) | Missing {
  const parsed = readingSchema.safeParse(fieldsOf(form));
  if (!parsed.success) return missing(parsed.error);
  const { attemptId, key, ...hookUp } = parsed.data;
  return { attemptId, key, hookUp };
}

type ValueError = NumberProblem | 'words-too-long';

export function parseFinding(
  form: unknown,
): (ActFields & { finding: FindingAct }) | Missing | { error: ValueError; values: Record<string, string | number> } {
  const parsed = findingSchema.safeParse(fieldsOf(form));
  if (!parsed.success) return missing(parsed.error);
  const { attemptId, key, value = '', unit, limit, words, ...rest } = parsed.data;
  if (words.length > MOST_WORDS) return { error: 'words-too-long', values: { length: words.length, most: MOST_WORDS } };
  const number = parseDecimal(value);
  if (typeof number === 'string') return { error: number, values: { value } };
  const entered = number === null || unit === undefined ? null : { value: number, unit };
  const finding: FindingAct = { kind: 'finding', ...rest, entered, limit: limit === NO_LIMIT ? null : limit, words };
  return { attemptId, key, finding };
}

/** A call; `lacking` names what a second cause that was begun still needs. */
export function parseCall(form: unknown): (ActFields & { choice: CallChoice }) | Missing | { lacking: string[] } {
  const parsed = callSchema.safeParse(fieldsOf(form));
  if (!parsed.success) return missing(parsed.error);
  const { attemptId, key, alsoCause, alsoRepair, alsoProof, restored, ...first } = parsed.data;
  const second = { alsoCause, alsoRepair, alsoProof };
  const lacking = Object.entries(second).flatMap(([name, value]) => (value === '' ? [name] : []));
  if (lacking.length > 0 && lacking.length < 3) return { lacking };
  const also = lacking.length === 0 && { also: answerFrom(alsoCause, alsoRepair, alsoProof) };
  return { attemptId, key, choice: { ...answerFrom(first.cause, first.repair, first.proof), ...also, restored } };
}

function answerFrom(cause: string, repair: string, named: string): AnswerChoice {
  const [check = '', condition = ''] = named.split('|');
  return { cause, repair, check, condition };
}

const LISTS = ['clears', 'suspects', 'restored'] as const;

/** Single fields as they came, lists as lists. Anything that is no form has no fields. */
function fieldsOf(form: unknown): Record<string, unknown> {
  if (!(form instanceof FormData)) return {};
  const lists = LISTS.map((name) => [name, form.getAll(name)] as const);
  return { ...Object.fromEntries(form), ...Object.fromEntries(lists) };
}

function missing(error: z.ZodError): Missing {
  return { missing: [...new Set(error.issues.map(({ path }) => String(path[0])))] };
}
