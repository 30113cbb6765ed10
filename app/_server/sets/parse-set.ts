import { z } from 'zod';
import type { FieldFault } from '@/app/questions/draft-answer';
import type { Draft, DraftItem } from '@/app/sets/editor/draft';
import { questionKindIds } from '@/lib/questions/question';
import { type SetBody, type SetItem, setBodySchema } from '@/lib/sets/set-body';
import { parseDecimal } from '../parse-decimal';
import { type FaultTeller, faultTeller } from './fault-words';

/** Longer than anything that is taken; what it is too long for is for the set's own schema to say. */
const typed = z.string().max(5000);
const id = z.string().regex(/^[a-z0-9]{1,16}$/);
const ids = z.array(typed).max(40);

const itemSchema: z.ZodType<DraftItem> = z.discriminatedUnion('kind', [
  z.strictObject({ id, kind: z.literal('case'), code: typed }),
  z.strictObject({
    id,
    kind: z.literal('cases'),
    count: typed,
    topics: ids,
    rigs: ids,
    from: typed,
    to: typed,
    hardest: z.boolean(),
    faults: z.enum(['', 'single', 'double']),
    minutes: typed,
  }),
  z.strictObject({ id, kind: z.literal('written'), questionId: typed }),
  z.strictObject({
    id,
    kind: z.literal('questions'),
    count: typed,
    questionKind: z.enum(['', ...questionKindIds]),
    topic: typed,
  }),
]);

/** A set as the editor sends it. */
const draftSchema: z.ZodType<Draft> = z.strictObject({
  title: typed,
  note: typed,
  blueprint: typed,
  items: z.array(itemSchema).max(200),
});

/** Ends of a band of difficulty of which only one is named. */
const FARTHEST = 6;

/**
 * The set that an editor's draft comes to.
 *
 * @returns undefined for what no editor sends; what is wrong at which field where it cannot be kept as it stands.
 */
export async function parseSet(json: unknown): Promise<{ body: SetBody } | { faults: FieldFault[] } | undefined> {
  const draft = draftSchema.safeParse(parseJson(json));
  if (!draft.success) return undefined;
  const parsed = setBodySchema.safeParse(candidateFrom(draft.data));
  if (parsed.success) return { body: parsed.data };
  const say = await faultTeller();
  return { faults: faultsOf(parsed.error.issues, draft.data, say) };
}

/** The items of a draft that can be kept as they stand, whatever is wrong with the others. */
export function usableItems(json: unknown): { draft: Draft; items: SetItem[] } | undefined {
  const draft = draftSchema.safeParse(parseJson(json));
  if (!draft.success) return undefined;
  const items = draft.data.items.flatMap((item) => parseItem(item) ?? []);
  return { draft: draft.data, items };
}

/** One item as the editor sends it; undefined where it cannot be drawn as it stands. */
export function itemIn(json: unknown): SetItem | undefined {
  const draft = itemSchema.safeParse(parseJson(json));
  return draft.success ? parseItem(draft.data) : undefined;
}

function parseItem(item: DraftItem): SetItem | undefined {
  return setBodySchema.safeParse({ title: '-', note: '', items: [itemFrom(item)] }).data?.items[0];
}

function parseJson(json: unknown): unknown {
  try {
    return typeof json === 'string' ? JSON.parse(json) : undefined;
  } catch {
    return undefined;
  }
}

function candidateFrom({ title, note, blueprint, items }: Draft): unknown {
  return { title, note, items: items.map(itemFrom), ...(blueprint !== '' && { blueprint }) };
}

function itemFrom(item: DraftItem): unknown {
  switch (item.kind) {
    case 'case':
      return { ...item, code: item.code.trim() || undefined };
    case 'written':
      return { ...item, questionId: item.questionId || undefined };
    case 'questions': {
      const { questionKind, ...rest } = item;
      return { ...rest, count: number(item.count), ...(questionKind !== '' && { questionKind }) };
    }
    case 'cases': {
      const { topics, rigs, from, to, hardest, faults, minutes } = item;
      const isBand = from.trim() !== '' || to.trim() !== '';
      const wishes = {
        ...(topics.length > 0 && { topics }),
        ...(rigs.length > 0 && { rigs }),
        ...(isBand && { difficulty: [number(from) ?? -FARTHEST, number(to) ?? FARTHEST] }),
        ...(hardest && { hardest }),
        ...(faults !== '' && { faults }),
        ...(minutes.trim() !== '' && { minutes: number(minutes) }),
      };
      return { id: item.id, kind: 'cases', count: number(item.count), wishes };
    }
  }
}

/** What is no number stays as it was typed, for the schema to refuse. */
function number(text: string): unknown {
  const value = parseDecimal(text);
  return typeof value === 'number' ? value : text.trim() === '' ? undefined : text;
}

function faultsOf(issues: readonly z.core.$ZodIssue[], { items }: Draft, say: FaultTeller): FieldFault[] {
  const faults = new Map<string, string>();
  for (const { path, code } of issues) {
    const [first, index, ...rest] = path;
    const item = first === 'items' && typeof index === 'number' ? items[index] : undefined;
    const field = item ? fieldOf(rest.map(String)) : String(first ?? 'items');
    const at = item ? `items.${item.id}.${field}` : field;
    if (!faults.has(at)) faults.set(at, say.field(field, code));
  }
  return [...faults].map(([at, text]) => ({ at, text }));
}

/** The editor's field for a path within an item. */
function fieldOf([first = '', second = '', third = '']: readonly string[]): string {
  if (first !== 'wishes') return first;
  if (second === 'difficulty') return third === '1' ? 'to' : 'from';
  return second;
}
