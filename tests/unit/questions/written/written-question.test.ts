import { describe, expect, test } from 'vitest';
import { unknownIn } from '@/lib/questions/written/unknown-in';
import { writtenQuestionSchema } from '@/lib/questions/written/written-question';
import { catalogue } from '../../../support/bench-rig';
import { aWrittenQuestion } from '../../../support/written-questions';

/** Where something is wrong, and what. */
function faultsIn(written: unknown): string[] {
  const parsed = writtenQuestionSchema.safeParse(written);
  if (parsed.success) return [];
  return parsed.error.issues.map((issue) => {
    const params = 'params' in issue ? (issue.params as { code: string }) : undefined;
    return `${issue.path.join('.')} ${params?.code ?? issue.code}`;
  });
}

const options = [
  { id: 'one', text: 'Yes' },
  { id: 'two', text: 'No' },
];

test.each([
  [
    'two options of one id',
    aWrittenQuestion('choice', { body: { options: [...options, { id: 'two', text: 'Ah' }] } }),
    'body.options.2.id id-twice',
  ],
  [
    'two options that read alike',
    aWrittenQuestion('choice', { body: { options: [...options, { id: 'three', text: ' No ' }] } }),
    'body.options.2.text text-twice',
  ],
  [
    'a right option that there is not',
    aWrittenQuestion('choice', { body: { options, right: 'three' } }),
    'body.right no-such-id',
  ],
  ['no right option', aWrittenQuestion('several', { body: { options, right: [] } }), 'body.right too_small'],
  [
    'one option alone',
    aWrittenQuestion('choice', { body: { options: options.slice(0, 1) } }),
    'body.options too_small',
  ],
  [
    'a name in braces that stands for nothing',
    aWrittenQuestion('numbers', { stem: '{before} {behind}' }),
    'stem name-unknown',
  ],
  ['the key in the stem', aWrittenQuestion('numbers', { stem: '{answer}' }), 'stem name-unknown'],
  [
    'a formula of an unknown name',
    aWrittenQuestion('numbers', { body: { formula: 'before - behind' } }),
    'body.formula formula',
  ],
  [
    'a formula without a number at one end of a range',
    aWrittenQuestion('numbers', { body: { formula: '1 / (before - 400)' } }),
    'body.formula no-number',
  ],
  [
    'a formula without a number somewhere in between',
    aWrittenQuestion('numbers', { body: { formula: '1 / (before - 450)' } }),
    'body.formula no-number',
  ],
  ['too large a number', aWrittenQuestion('numbers', { body: { formula: '9^9^9^9' } }), 'body.formula no-number'],
  [
    'an empty range',
    aWrittenQuestion('numbers', { body: { variables: [{ name: 'before', from: 2, to: 1, step: 1 }] } }),
    'body.variables.0 range',
  ],
  [
    'no step',
    aWrittenQuestion('numbers', { body: { variables: [{ name: 'before', from: 1, to: 2, step: 0 }] } }),
    'body.variables.0.step too_small',
  ],
  [
    'a picture of elsewhere',
    aWrittenQuestion('spot', { body: { picture: { id: '../../../../etc/pass', width: 1, height: 1, alt: 'x' } } }),
    'body.picture.id invalid_format',
  ],
  [
    'an area of no width',
    aWrittenQuestion('spot', { body: { areas: [{ id: 'a', name: 'A', left: 0.5, right: 0.5, top: 0, bottom: 1 }] } }),
    'body.areas.0 area',
  ],
])('%s is refused where it stands', (_, written, fault) => {
  expect(faultsIn(written)).toContain(fault);
});

test.each(['pi', 'e', 'sqrt', 'answer'])('a variable cannot be called %s', (name) => {
  const variables = [{ name, from: 1, to: 2, step: 1 }];
  const written = aWrittenQuestion('numbers', { stem: 'x', explanation: 'x', body: { variables, formula: '1' } });
  expect(faultsIn(written)).toEqual(['body.variables.0.name name-taken']);
});

test('a thousand variables are refused without trying every corner of them', () => {
  const variables = Array.from({ length: 1000 }, (_, n) => ({ name: `x${n}`, from: 0, to: 1, step: 1 }));
  const written = aWrittenQuestion('numbers', { stem: 'x', explanation: 'x', body: { variables, formula: 'x1' } });
  expect(faultsIn(written)).toEqual(['body.variables too_big']);
});

test('the numbers without a result are named', () => {
  const parsed = writtenQuestionSchema.safeParse(
    aWrittenQuestion('numbers', { body: { formula: 'sqrt(after - before + 60)' } }),
  );
  const [issue] = parsed.error?.issues ?? [];
  const { values } = (issue as unknown as { params: { values: { draws: string } } }).params;
  expect(values.draws).toMatch(/^before = 4\d0, after = 3\d\d$|^before = 500, after = 3\d\d$/);
});

describe('what content does not have', () => {
  test('is named where it stands', () => {
    const written = aWrittenQuestion('point', {
      topics: ['filtration', 'cooking'],
      body: {
        right: [
          { what: 'element', of: 'gear-pump' },
          { what: 'port', of: 'Z9' },
          { what: 'node', of: 'gear-pump' },
        ],
      },
    });
    expect(unknownIn(written, catalogue).map(({ path, code }) => `${path.join('.')} ${code}`)).toEqual([
      'topics.1 no-such-topic',
      'body.right.1 no-such-part',
      'body.right.2 no-such-part',
    ]);
    const elsewhere = aWrittenQuestion('point', { body: { rig: 'no-such' } });
    expect(unknownIn(elsewhere, catalogue)).toMatchObject([{ path: ['body', 'rig'], code: 'no-such-rig' }]);
  });
});
