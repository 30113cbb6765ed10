import fc from 'fast-check';
import { functionNames, parseFormula } from '@/lib/questions/written/formula';
import { type WrittenQuestion, writtenQuestionSchema } from '@/lib/questions/written/written-question';
import { unitNames } from '@/lib/units';

/** Signs that files of all kinds stumble over, and any others that text can hold. */
const pieces = fc.oneof(
  fc.constantFrom(
    '=',
    '+',
    '-',
    '@',
    '＝',
    '&',
    '<',
    '>',
    ']]>',
    '"',
    "'",
    ';',
    ',',
    '|',
    '\n',
    '\r\n',
    '\r',
    '\t',
    '\\',
  ),
  fc.constantFrom(
    '&amp;',
    '<script>',
    '<!DOCTYPE',
    '<![CDATA[',
    '*a*',
    '`',
    '1. ',
    '\u0000',
    '\u0008',
    '\uFEFF',
    '\uFFFE',
    'é',
    '\u{1F527}',
  ),
  fc.string({ unit: 'binary', maxLength: 4 }),
);

/** Text as a valid question has it: without blanks at its ends. */
export function anyText(most = 10): fc.Arbitrary<string> {
  const joined = fc.array(pieces, { minLength: 1, maxLength: most }).map((parts) => parts.join('').trim());
  return fc.oneof(joined, fc.constant('Plain words')).filter((text) => text !== '' && text.length <= 400);
}

const id = fc.stringMatching(/^[a-z0-9-]{1,20}$/);
const pictureId = fc.stringMatching(/^[0-9a-f]{20}$/);
const picture = fc.record({
  id: pictureId,
  width: fc.integer({ min: 1, max: 1600 }),
  height: fc.integer({ min: 1, max: 1600 }),
  alt: anyText(),
});

const options = fc
  .uniqueArray(fc.tuple(id, anyText(), fc.option(anyText(), { nil: undefined })), {
    minLength: 2,
    maxLength: 12,
    comparator: ([one, text], [other, same]) => one === other || text.trim() === same.trim(),
  })
  .map((rows) => rows.map(([name, text, because]) => ({ id: name, text, ...(because !== undefined && { because }) })));

const choice = fc.tuple(options, fc.boolean(), fc.nat()).map(([all, shuffle, which]) => ({
  form: 'choice' as const,
  shuffle,
  options: all,
  right: all[which % all.length]?.id ?? '',
}));

const several = fc.tuple(options, fc.boolean(), fc.nat()).map(([all, shuffle, mask]) => {
  const right = all.filter((_, index) => (mask >> index) & 1).map((one) => one.id);
  return { form: 'several' as const, shuffle, options: all, right: right.length > 0 ? right : [all[0]?.id ?? ''] };
});

const order = options.map((items) => ({ form: 'order' as const, items }));

const variableNames = fc.uniqueArray(
  fc.stringMatching(/^[A-Za-z][A-Za-z0-9_]{0,8}$/).filter((name) => !RESERVED.has(name)),
  { minLength: 0, maxLength: 3 },
);
const RESERVED = new Set<string>([...functionNames, 'pi', 'e', 'answer']);

/** A formula of some variables, as text. */
export function anyFormula(names: readonly string[], depth = 3): fc.Arbitrary<string> {
  const leaf = fc.oneof(
    fc.integer({ min: 0, max: 99 }).map(String),
    fc.constantFrom('0.5', '1e2', 'pi', 'e', ...names),
  );
  if (depth === 0) return leaf;
  const inner = anyFormula(names, depth - 1);
  const one = fc.constantFrom(...functionNames.filter((name) => name !== 'min' && name !== 'max'));
  return fc.oneof(
    leaf,
    fc
      .tuple(inner, fc.constantFrom('+', '-', '*', '/', '^', '×', '−'), inner)
      .map(([a, sign, b]) => `(${a} ${sign} ${b})`),
    fc.tuple(one, inner).map(([name, a]) => `${name}(${a})`),
    fc.tuple(fc.constantFrom('min', 'max'), inner, inner).map(([name, a, b]) => `${name}(${a}, ${b})`),
    inner.map((a) => `-(${a})`),
  );
}

const numbers = variableNames.chain((names) =>
  fc
    .record({
      variables: fc.tuple(
        ...names.map((name) =>
          fc
            .tuple(fc.integer({ min: -500, max: 500 }), fc.nat(300), fc.integer({ min: 1, max: 50 }))
            .map(([from, wide, step]) => ({
              name,
              from: from / 10,
              to: (from + wide) / 10,
              step: step / 10,
            })),
        ),
      ),
      formula: anyFormula(names),
      unit: fc.option(fc.constantFrom(...unitNames), { nil: undefined }),
      tolerance: fc.record({
        kind: fc.constantFrom('absolute' as const, 'percent' as const),
        amount: fc.constantFrom(0.5, 1, 2.5, 1e-7),
      }),
      decimals: fc.integer({ min: 0, max: 6 }),
    })
    .filter(({ formula }) => 'formula' in parseFormula(formula, names))
    .map(({ unit, ...rest }) => ({ form: 'numbers' as const, ...rest, ...(unit !== undefined && { unit }) })),
);

const target = fc.record({
  what: fc.constantFrom('element' as const, 'node' as const, 'port' as const),
  of: fc.stringMatching(/^[a-z0-9-]{1,20}$/),
});
const point = fc
  .array(target, { minLength: 1, maxLength: 3 })
  .map((right) => ({ form: 'point' as const, rig: 'tern-13', right }));

const area = fc
  .tuple(fc.nat(90), fc.nat(90), fc.integer({ min: 1, max: 10 }), fc.integer({ min: 1, max: 10 }))
  .map(([left, top, wide, high]) => ({
    left: left / 100,
    top: top / 100,
    right: (left + wide) / 100,
    bottom: (top + high) / 100,
  }));
const spot = fc
  .uniqueArray(fc.tuple(id, anyText(), area), {
    minLength: 2,
    maxLength: 5,
    comparator: ([one, text], [other, same]) => one === other || text === same,
  })
  .chain((rows) => fc.record({ rows: fc.constant(rows), picture }))
  .map(({ rows, picture: shown }) => ({
    form: 'spot' as const,
    picture: shown,
    areas: rows.map(([name, text, box]) => ({ id: name, name: text, ...box })),
    right: [rows[0]?.[0] ?? ''],
  }));

const words = fc
  .record({
    most: fc.integer({ min: 50, max: 4000 }),
    model: anyText(),
    guidance: fc.oneof(anyText(), fc.constant('')),
    steps: fc.integer({ min: 1, max: 10 }),
  })
  .map((body) => ({ form: 'words' as const, ...body }));

/** Any written question that is valid. */
export const anyWrittenQuestion: fc.Arbitrary<WrittenQuestion> = fc
  .record({
    title: anyText(),
    stem: anyText(20),
    topics: fc.constantFrom(['filtration'], ['filtration', 'fuel-quality']),
    difficulty: fc.integer({ min: -40, max: 40 }).map((tenths) => tenths / 10 + 0),
    seconds: fc.integer({ min: 10, max: 3600 }),
    explanation: anyText(20),
    picture: fc.option(picture, { nil: undefined, freq: 6 }),
    body: fc.oneof(choice, several, order, numbers, point, spot, words),
  })
  .map(({ picture: beside, ...rest }) => ({ ...rest, ...(beside && { picture: beside }) }))
  .map((question) => writtenQuestionSchema.safeParse(question))
  .filter((parsed) => parsed.success)
  .map(({ data }) => data as WrittenQuestion);
