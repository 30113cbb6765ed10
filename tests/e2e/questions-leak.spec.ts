import { sayer } from '@/app/_server/questions/say';
import messages from '@/content/messages/en.json' with { type: 'json' };
import type { Line } from '@/lib/questions/line';
import type { QuestionSpec } from '@/lib/questions/question';
import { kindOf } from '@/lib/questions/question-from-seed';
import { answerFields } from '../support/answer-fields';
import { catalogue } from '../support/bench-rig';
import { callAction } from '../support/call-action';
import { newSession, people } from '../support/people';
import { placeFor, SHARED_PORT } from '../support/server';
import { aWrittenQuestion } from '../support/written-questions';
import { type Asked, addWritten, anAnswerTo, everyKindAndForm, openSitting, questionOf, shared } from './at-questions';
import { expect, test } from './fixtures';
import { expectAlike, wholeBothWays } from './heard';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

/** Names that stand in a question only where its key, its marking or its difficulty do. */
const TELLING = /guessFloor|\\?"(?:explanation|because|slips|follows|features|right\\?":\[)/;

const cautions: Readonly<Record<string, string>> = messages.cautions;

/** Every address that may show something of a sitting. */
function addressesOf(id: string): string[] {
  const page = `/learn/sittings/${id}`;
  const others = ['/learn/questions', '/learn', '/me', '/me/export/json', '/me/export/csv'];
  return [page, `${page}?at=1`, `${page}?at=2`, `${page}?at=9`, ...others];
}

/** Somebody who has nothing marked, so that nothing may be told anywhere. */
let somebody: Somebody;

test.beforeAll(async () => {
  somebody = await somebodyNew('learner');
});

const theirs = () => ({ learnerId: somebody.id, organizationId: somebody.organizationId });

for (const mode of ['drill', 'check', 'review'] as const)
  for (const { name, spec } of everyKindAndForm())
    test(`an open ${mode} tells nothing of ${name} but what is asked`, async ({ page }) => {
      await signInNew(page, somebody);
      const id = await openSitting([spec], { mode, ...theirs() });
      const answers = await wholeBothWays(page.request, addressesOf(id));
      expect(answers.some((answer) => tells(answer, stemOf(spec)))).toBe(true);
      for (const answer of answers) expectNothingTold(answer, spec);
    });

test('what is looked for is found once a question is answered', async ({ request }) => {
  for (const { name, spec } of everyKindAndForm()) {
    const id = await openSitting([spec]);
    const told = await answer(id, spec);
    expect(told.length, name).toBeGreaterThan(0);
    const [page = ''] = await wholeBothWays(request, [`/learn/sittings/${id}`]);
    for (const sentence of secretsOf(spec).slice(0, 1))
      expect(tells(page, sentence), `${name}: ${sentence}`).toBe(true);
  }
});

for (const kind of ['spot-hazard', 'which-tool', 'put-in-order'] as const)
  test(`what ${kind} warns of comes with its answer, in a check once it is handed in`, async ({ request }) => {
    const spec = { kind, seed: 'cautions', topic: 'safe-working-and-isolation' };
    const { cautionsAfter = [] } = questionOf(spec);
    expect(cautionsAfter.length).toBeGreaterThan(0);
    const warnings = [messages.safety.list, ...cautionsAfter.map((id) => cautions[id] ?? id)];
    const warnedOf = async (id: string) => {
      const [page = ''] = await wholeBothWays(request, [`/learn/sittings/${id}`]);
      const [asked = ''] = await wholeBothWays(request, [`/learn/sittings/${id}?at=1`]);
      expect(tells(page, messages.safety.law)).toBe(true);
      return warnings.filter((sentence) => tells(page + asked, sentence));
    };
    const drill = await openSitting([spec]);
    expect(await warnedOf(drill)).toEqual([]);
    await answer(drill, spec);
    expect(await warnedOf(drill)).toEqual(warnings);
    const check = await openSitting([spec], { mode: 'check' });
    await answer(check, spec, { action: 'saveAnswer' });
    expect(await warnedOf(check)).toEqual([]);
    await send(check, 'handInSitting', {});
    expect(await warnedOf(check)).toEqual(warnings);
  });

test('saving answers of a check, wrong or right, is answered without a word on them', async ({ page }) => {
  await signInNew(page, somebody);
  for (const { name, spec } of everyKindAndForm())
    for (const right of [true, false]) {
      const id = await openSitting([spec], { mode: 'check', ...theirs() });
      const told = await answer(id, spec, { right, action: 'saveAnswer', who: somebody.id });
      expect(told, name).toContain('"done":true');
      expectNothingTold(told, spec);
      for (const one of await wholeBothWays(page.request, addressesOf(id))) expectNothingTold(one, spec);
    }
});

for (const mode of ['drill', 'check'] as const)
  test(`two questions of a ${mode} that differ in nothing but the key are the same, byte for byte`, async ({
    request,
  }) => {
    const sides = await keysApart();
    const ids: string[] = [];
    for (const versions of sides) {
      const asked = versions.map((writtenVersionId): Asked => ({ writtenVersionId, seed: 'same-bytes' }));
      ids.push(await openSitting(asked, { mode, createdAt: new Date(Date.UTC(2026, 0, 1)) }));
    }
    const [told] = await expectAlike(async (side) => {
      const id = ids[side] ?? '';
      const paths = Array.from({ length: sides[0].length }, (_, index) => `/learn/sittings/${id}?at=${index + 1}`);
      const answers = await wholeBothWays(request, paths);
      return answers.map((one) => one.replaceAll(id, 'SITTING').replaceAll(/"?\d{13}\b/g, 'TIME'));
    });
    expect(told.length).toBeGreaterThan(5);
  });

test('saving the same choice where it is right and where it is wrong is answered the same', async () => {
  const sides = await keysApart();
  const [told] = await expectAlike(async (side) => {
    const asked = [{ writtenVersionId: sides[side][0] ?? '', seed: 'same-bytes' }];
    const id = await openSitting(asked, { mode: 'check', createdAt: new Date(Date.UTC(2026, 0, 1)) });
    const { text } = await send(id, 'saveAnswer', { option: 'a' });
    return [
      text
        .replaceAll(id, 'SITTING')
        .replaceAll(/"?\d{13}\b/g, 'TIME')
        .replaceAll(/"nonce":"[\w-]+"/g, 'NONCE'),
    ];
  });
  expect(told[0]).toContain('"done":true');
});

test('a flag, and a question asked next, tell nothing of what is open', async () => {
  for (const { spec } of everyKindAndForm().slice(0, 4)) {
    const id = await openSitting([spec, spec], { mode: 'check' });
    const { text } = await send(id, 'flagQuestion', { flagged: 'yes' });
    expect(text).toContain('"done":true');
    expectNothingTold(text, spec);
    expectNothingTold((await send(id, 'nextQuestion', {})).text, spec);
  }
});

/** Versions of written questions of every form, in two rows that differ in their keys alone. */
async function keysApart(): Promise<[string[], string[]]> {
  const bodies = [
    [aWrittenQuestion('choice'), aWrittenQuestion('choice', { body: { right: 'two' } })],
    [aWrittenQuestion('several'), aWrittenQuestion('several', { body: { right: ['three'] } })],
    [aWrittenQuestion('numbers'), aWrittenQuestion('numbers', { body: { formula: 'before + after' } })],
    [aWrittenQuestion('spot'), aWrittenQuestion('spot', { body: { right: ['left'] } })],
    [aWrittenQuestion('words'), aWrittenQuestion('words', { body: { model: 'A different answer.', steps: 9 } })],
  ] as const;
  const rows: [string[], string[]] = [[], []];
  for (const [one, other] of bodies) {
    rows[0].push(await addWritten(one));
    rows[1].push(await addWritten({ ...other, explanation: 'Another reason.', difficulty: -2 }));
  }
  return rows;
}

async function answer(
  id: string,
  spec: QuestionSpec,
  { right = true, action = 'answerQuestion', who = people.learner.id as string } = {},
): Promise<string> {
  const { text } = await send(id, action, answerFields(anAnswerTo(questionOf(spec), right)), who);
  return text;
}

let pressed = 0;

async function send(
  sittingId: string,
  action: string,
  fields: Record<string, string | readonly string[]>,
  who: string = people.learner.id,
) {
  const cookie = await newSession(shared(), who);
  const origin = `http://127.0.0.1:${placeFor(SHARED_PORT).port}`;
  const common = { sittingId, place: '1', key: String(++pressed).padStart(32, '0') };
  return callAction({ origin, cookie }, `/learn/sittings/${sittingId}`, action, { ...common, ...fields });
}

function expectNothingTold(answer: string, spec: QuestionSpec): void {
  expect(TELLING.exec(answer)?.[0]).toBeUndefined();
  expect(answer).not.toContain(spec.seed);
  for (const sentence of secretsOf(spec)) expect(tells(answer, sentence), sentence).toBe(false);
}

/** Sentences that only somebody who has answered may read. */
function secretsOf(spec: QuestionSpec): string[] {
  const question = questionOf(spec);
  const { key } = question;
  const because = 'because' in key ? Object.values(key.because ?? {}) : [];
  const slips =
    key.form === 'numbers' ? Object.values(key.parts).flatMap((part) => part.slips.map(({ line }) => line)) : [];
  const open = inLetters(
    JSON.stringify([question.stem, question.answer, question.figure], (_, value) => lineIn(value, spec)),
  );
  return [...question.explanation, ...because, ...slips]
    .map((line) => said(line, spec))
    .filter((sentence) => sentence.length > 20 && !open.includes(inLetters(sentence)));
}

function stemOf(spec: QuestionSpec): string {
  const [first] = questionOf(spec).stem;
  return first ? said(first, spec) : '';
}

function lineIn(value: unknown, spec: QuestionSpec): unknown {
  return typeof value === 'object' && value !== null && 'say' in value ? said(value as Line, spec) : value;
}

function said(line: Line, { kind }: QuestionSpec): string {
  const words = sayer(kindOf(kind, catalogue).content, catalogue)(line);
  return 'text' in words ? words.text : words.markdown;
}

/** Whether an answer says something, however it writes signs. */
function tells(answer: string, sentence: string): boolean {
  return inLetters(answer).includes(inLetters(sentence));
}

function inLetters(text: string): string {
  return text
    .replace(/&(?:#x?[0-9a-f]+|[a-z]+);|\\u[0-9a-f]{4}|<!--.*?-->/gi, '')
    .replace(/[^a-z0-9]/gi, '')
    .toLowerCase();
}
