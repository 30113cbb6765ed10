import { z } from 'zod';
import { idSchema } from '../../source';
import { unitNames } from '../../units';
import { MOST_CHARACTERS } from '../answer';
import { MOST_VARIABLES } from './draws';
import { faultsOf, type WrittenFault } from './written-faults';

/** Longest Markdown of a stem or an explanation. */
export const MOST_MARKDOWN = 8000;

/** What an issue says besides where it is, where the shape alone does not say it. */
export type IssueParams = Pick<WrittenFault, 'code' | 'values'>;

const markdown = z.string().trim().min(1).max(MOST_MARKDOWN);
const short = z.string().trim().min(1).max(500);
const optionId = z.string().regex(/^[a-z0-9-]{1,20}$/);
const share = z.number().min(0).max(1);

const optionSchema = z.strictObject({
  id: optionId,
  /** Markdown of one line. */
  text: short,
  /** What is said to whoever chose it wrongly. */
  because: z.string().trim().max(1000).optional(),
});

/** A number drawn anew for each learner: from…to in steps. */
const variableSchema = z
  .strictObject({
    name: z.string().regex(/^[a-z][a-z0-9_]{0,19}$/i),
    from: z.number(),
    to: z.number(),
    step: z.number().positive(),
  })
  .refine(({ from, to }) => from <= to, {
    error: 'from must not lie above to',
    params: { code: 'range', values: {} } satisfies IssueParams,
  });

const areaSchema = z
  .strictObject({
    id: optionId,
    /** What is there, for whoever does not see it; it must not give the answer away. */
    name: short,
    left: share,
    top: share,
    right: share,
    bottom: share,
  })
  .refine(({ left, right, top, bottom }) => left < right && top < bottom, {
    error: 'an area needs a width and a height',
    params: { code: 'area', values: {} } satisfies IssueParams,
  });

/** An uploaded picture, with words for whoever does not see it. */
const pictureSchema = z.strictObject({
  id: z.string().regex(/^[0-9a-f]{20}$/),
  width: z.int().positive(),
  height: z.int().positive(),
  alt: short,
});

const options = z.array(optionSchema).min(2).max(12);

const bodySchema = z.discriminatedUnion('form', [
  z.strictObject({ form: z.literal('choice'), shuffle: z.boolean(), options, right: optionId }),
  z.strictObject({ form: z.literal('several'), shuffle: z.boolean(), options, right: z.array(optionId).min(1) }),
  z.strictObject({
    form: z.literal('numbers'),
    variables: z.array(variableSchema).max(MOST_VARIABLES),
    /** An expression of the variables; see `lib/questions/written/formula.ts`. */
    formula: z.string().trim().min(1).max(500),
    /** None for a bare number. */
    unit: z.enum(unitNames).optional(),
    tolerance: z.strictObject({ kind: z.enum(['absolute', 'percent']), amount: z.number().positive() }),
    /** Decimals in which the key is shown. */
    decimals: z.int().min(0).max(6),
  }),
  /** Items in the right order. */
  z.strictObject({ form: z.literal('order'), items: z.array(optionSchema).min(2).max(12) }),
  z.strictObject({
    form: z.literal('point'),
    rig: idSchema,
    right: z.array(z.strictObject({ what: z.enum(['element', 'node', 'port']), of: z.string().max(80) })).min(1),
  }),
  z.strictObject({
    form: z.literal('spot'),
    picture: pictureSchema,
    areas: z.array(areaSchema).min(2).max(20),
    right: z.array(optionId).min(1),
  }),
  z.strictObject({
    form: z.literal('words'),
    most: z.int().min(50).max(MOST_CHARACTERS),
    model: markdown,
    /** For whoever marks it. */
    guidance: z.string().trim().max(MOST_MARKDOWN),
    /** Marks from 0 to this. */
    steps: z.int().min(1).max(10),
  }),
]);

/** A question as an instructor writes it. Markdown never holds HTML that is obeyed. */
export const writtenQuestionSchema = z
  .strictObject({
    title: short,
    /** `{name}` stands for a variable. */
    stem: markdown,
    topics: z.array(idSchema).min(1).max(3),
    /** Design difficulty, logits. */
    difficulty: z.number().min(-4).max(4),
    seconds: z.int().min(10).max(3600),
    explanation: markdown,
    /** Beside the stem. */
    picture: pictureSchema.optional(),
    body: bodySchema,
  })
  .superRefine((written, { addIssue }) => {
    for (const { path, code, values } of faultsOf(written))
      addIssue({
        code: 'custom',
        path: [...path],
        message: `${code} ${JSON.stringify(values)}`,
        params: { code, values } satisfies IssueParams,
      });
  });

export type WrittenQuestion = z.infer<typeof writtenQuestionSchema>;
export type WrittenBody = z.infer<typeof bodySchema>;
