import { z } from 'zod';
import type { Draft, DraftArea, DraftBody, DraftOption, DraftPicture } from '@/app/questions/editor/draft';
import { findPicture } from '@/db/queries/pictures';
import { unknownIn } from '@/lib/questions/written/unknown-in';
import type { WrittenFault } from '@/lib/questions/written/written-faults';
import { type WrittenQuestion, writtenQuestionSchema } from '@/lib/questions/written/written-question';
import { catalogue } from '../../catalogue';
import { database } from '../../database';
import { parseDecimal } from '../../parse-decimal';

/** Something that cannot stay as it is, and where. */
export type Issue = z.core.$ZodIssue;

/** Longer than anything that is taken; what it is too long for is for the question's own schema to say. */
const typed = z.string().max(20_000);
const ids = z.array(typed).max(100);
const picture = z.strictObject({ id: typed, width: z.number(), height: z.number(), alt: typed });
const option = z.strictObject({ id: typed, text: typed, because: typed });
const options = z.array(option).max(100);
const variable = z.strictObject({ name: typed, from: typed, to: typed, step: typed });
const area = z.strictObject({ id: typed, name: typed, left: typed, top: typed, right: typed, bottom: typed });
const part = z.strictObject({ what: z.enum(['element', 'node', 'port']), of: typed });

/** A draft as the editor sends it. */
const draftSchema: z.ZodType<Draft> = z.strictObject({
  title: typed,
  stem: typed,
  explanation: typed,
  topics: ids,
  difficulty: typed,
  seconds: typed,
  picture: picture.nullable(),
  body: z.discriminatedUnion('form', [
    z.strictObject({ form: z.literal('choice'), shuffle: z.boolean(), options, right: ids }),
    z.strictObject({ form: z.literal('several'), shuffle: z.boolean(), options, right: ids }),
    z.strictObject({
      form: z.literal('numbers'),
      variables: z.array(variable).max(100),
      formula: typed,
      unit: typed,
      tolerance: z.strictObject({ kind: z.enum(['absolute', 'percent']), amount: typed }),
      decimals: typed,
    }),
    z.strictObject({ form: z.literal('order'), items: options }),
    z.strictObject({ form: z.literal('point'), rig: typed, right: z.array(part).max(300) }),
    z.strictObject({
      form: z.literal('spot'),
      picture: picture.nullable(),
      areas: z.array(area).max(100),
      right: ids,
    }),
    z.strictObject({ form: z.literal('words'), most: typed, model: typed, guidance: typed, steps: typed }),
  ]),
});

/**
 * The question that an editor's draft comes to.
 *
 * @returns undefined for what no editor sends; the issues where the question cannot be kept as it stands.
 */
export async function parseDraft(
  json: unknown,
  organizationId: string,
): Promise<{ written: WrittenQuestion } | { issues: Issue[] } | undefined> {
  const draft = draftSchema.safeParse(parseJson(json));
  if (!draft.success) return undefined;
  const parsed = writtenQuestionSchema.safeParse(candidateFrom(draft.data));
  if (!parsed.success) return { issues: parsed.error.issues };
  const faults = [...unknownIn(parsed.data, catalogue()), ...(await strangePictures(parsed.data, organizationId))];
  return faults.length > 0 ? { issues: faults.map(issueOf) } : { written: parsed.data };
}

function parseJson(json: unknown): unknown {
  try {
    return typeof json === 'string' ? JSON.parse(json) : undefined;
  } catch {
    return undefined;
  }
}

function candidateFrom({ picture: beside, difficulty, seconds, body, ...rest }: Draft): unknown {
  return {
    ...rest,
    difficulty: number(difficulty),
    seconds: number(seconds),
    ...(beside && { picture: beside }),
    body: bodyFrom(body),
  };
}

function bodyFrom(body: DraftBody): unknown {
  switch (body.form) {
    case 'choice':
      return { ...body, options: body.options.map(optionFrom), right: body.right[0] };
    case 'several':
      return { ...body, options: body.options.map(optionFrom) };
    case 'numbers': {
      const { unit, ...rest } = body;
      return {
        ...rest,
        ...(unit !== '' && { unit }),
        variables: body.variables.map(({ name, from, to, step }) => ({
          name: name.trim(),
          from: number(from),
          to: number(to),
          step: number(step),
        })),
        tolerance: { ...body.tolerance, amount: number(body.tolerance.amount) },
        decimals: number(body.decimals),
      };
    }
    case 'order':
      return { ...body, items: body.items.map(optionFrom) };
    case 'point':
      return body;
    case 'spot':
      return { ...body, picture: body.picture ?? undefined, areas: body.areas.map(areaFrom) };
    case 'words':
      return { ...body, most: number(body.most), steps: number(body.steps) };
  }
}

function optionFrom({ id, text, because }: DraftOption) {
  return { id, text, ...(because.trim() !== '' && { because }) };
}

function areaFrom({ left, top, right, bottom, ...named }: DraftArea) {
  return { ...named, left: share(left), top: share(top), right: share(right), bottom: share(bottom) };
}

/** What is no number stays as it was typed, for the schema to refuse. */
function number(text: string): unknown {
  const value = parseDecimal(text);
  return typeof value === 'number' ? value : text.trim() === '' ? undefined : text;
}

function share(text: string): unknown {
  const value = number(text);
  return typeof value === 'number' ? Number((value / 100).toFixed(6)) : value;
}

/** Pictures that the organisation does not have, or not in that size. */
async function strangePictures(
  { picture: beside, body }: WrittenQuestion,
  organizationId: string,
): Promise<WrittenFault[]> {
  const pictures: [path: string[], picture: DraftPicture | undefined][] = [
    [['picture'], beside],
    [['body', 'picture'], body.form === 'spot' ? body.picture : undefined],
  ];
  const faults = pictures.map(async ([path, one]): Promise<WrittenFault[]> => {
    const found = one && (await findPicture(database(), one.id));
    const isOurs =
      found?.organizationId === organizationId && found.width === one?.width && found.height === one.height;
    return one && !isOurs ? [{ path, code: 'no-such-picture', values: {} }] : [];
  });
  return (await Promise.all(faults)).flat();
}

export function issueOf({ path, code, values }: WrittenFault): Issue {
  return { code: 'custom', path: [...path], message: code, input: undefined, params: { code, values } };
}
