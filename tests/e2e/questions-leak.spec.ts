import type { APIRequestContext } from '@playwright/test';
import messages from '@/content/messages/en.json' with { type: 'json' };
import type { QuestionSpec } from '@/lib/questions/question';
import { answerFields } from '../support/answer-fields';
import { callAction } from '../support/call-action';
import { newSession, people } from '../support/people';
import { placeFor, SHARED_PORT } from '../support/server';
import { aWrittenQuestion } from '../support/written-questions';
import { type Asked, addWritten, anAnswerTo, openSitting, questionOf, shared } from './at-questions';
import { expect, test } from './fixtures';
import { expectAlike, wholeBothWays } from './heard';
import { everySecret, inLetters, type SecretQuestion } from './secret-words';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

/** Names that stand in a question only where its key, its marking or its difficulty do. */
const TELLING = /guessFloor|\\?"(?:explanation|because|slips|follows|features|right\\?":\[)/;

const cautions: Readonly<Record<string, string>> = messages.cautions;

/** What may show something of a sitting, besides its own address. */
const OTHER_ADDRESSES = ['/learn/questions', '/learn', '/me', '/me/export/json', '/me/export/csv'];

/** Somebody who has nothing marked, so that nothing may be told anywhere. */
let somebody: Somebody;

test.beforeAll(async () => {
  somebody = await somebodyNew('learner');
});

const theirs = () => ({ learnerId: somebody.id, organizationId: somebody.organizationId });

for (const mode of ['drill', 'review'] as const)
  test(`an open ${mode} tells nothing of any kind but what is asked`, async ({ page }) => {
    await signInNew(page, somebody);
    for (const question of everySecret()) {
      const at = `/learn/sittings/${await openSitting([question.spec], { mode, ...theirs() })}`;
      const answers = await wholeBothWays(page.request, [at, `${at}?at=1`, `${at}?at=2`, `${at}?at=9`]);
      for (const answer of answers) expectAskedAlone(answer, question);
    }
    for (const answer of await wholeBothWays(page.request, OTHER_ADDRESSES)) expectNothingTold(answer);
  });

test('an open check tells nothing of any kind but what is asked, wherever one is in it', async ({ page }) => {
  await signInNew(page, somebody);
  await expectCheckTellsNothing(page.request, await openSitting(specs(), { mode: 'check', ...theirs() }));
});

test('what is looked for is found once a question is answered', async ({ request }) => {
  for (const { name, spec, secrets } of everySecret()) {
    const id = await openSitting([spec]);
    const told = await answer(id, spec);
    expect(told.length, name).toBeGreaterThan(0);
    const [page = ''] = await wholeBothWays(request, [`/learn/sittings/${id}`]);
    for (const secret of secrets.slice(0, 1)) expect(inLetters(page), name).toContain(secret);
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

for (const right of [true, false])
  test(`saving ${right ? 'right' : 'wrong'} answers of a check is answered without a word on them`, async ({
    page,
  }) => {
    await signInNew(page, somebody);
    const id = await openSitting(specs(), { mode: 'check', ...theirs() });
    for (const [index, question] of everySecret().entries()) {
      const told = await answer(id, question.spec, { right, action: 'saveAnswer', who: somebody.id, place: index + 1 });
      expect(told, question.name).toContain('"done":true');
      expectNothingTold(told, question);
    }
    await expectCheckTellsNothing(page.request, id);
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
  const id = await openSitting(specs(), { mode: 'check' });
  for (const [index, question] of everySecret().entries()) {
    const { text } = await send(id, 'flagQuestion', { flagged: 'yes' }, { place: index + 1 });
    expect(text, question.name).toContain('"done":true');
    expectNothingTold(text, question);
    expectNothingTold((await send(id, 'nextQuestion', {}, { place: index + 1 })).text, question);
  }
});

/** Whether an answer says something, however it writes signs. */
function tells(answer: string, sentence: string): boolean {
  return inLetters(answer).includes(inLetters(sentence));
}

function specs(): QuestionSpec[] {
  return everySecret().map(({ spec }) => spec);
}

/** Each place of an open check that asks every kind, and everything around it, read by who is signed in. */
async function expectCheckTellsNothing(request: APIRequestContext, id: string): Promise<void> {
  const at = `/learn/sittings/${id}`;
  for (const [index, question] of everySecret().entries())
    for (const answer of await wholeBothWays(request, [`${at}?at=${index + 1}`])) expectAskedAlone(answer, question);
  // With no place named, or one that is not there, the first is asked.
  const [first] = everySecret();
  for (const answer of await wholeBothWays(request, [at, `${at}?at=99`])) expectNothingTold(answer, first);
  for (const answer of await wholeBothWays(request, OTHER_ADDRESSES)) expectNothingTold(answer);
}

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
  { right = true, action = 'answerQuestion', ...where }: { right?: boolean; action?: string } & Where = {},
): Promise<string> {
  const { text } = await send(id, action, answerFields(anAnswerTo(questionOf(spec), right)), where);
  return text;
}

/** Whose press it is, the learner's unless said otherwise, and at which place, the first unless said otherwise. */
interface Where {
  who?: string;
  place?: number;
}

let pressed = 0;

async function send(
  sittingId: string,
  action: string,
  fields: Record<string, string | readonly string[]>,
  { who = people.learner.id, place = 1 }: Where = {},
) {
  const cookie = await newSession(shared(), who);
  const origin = `http://127.0.0.1:${placeFor(SHARED_PORT).port}`;
  const common = { sittingId, place: String(place), key: String(++pressed).padStart(32, '0') };
  return callAction({ origin, cookie }, `/learn/sittings/${sittingId}?at=${place}`, action, { ...common, ...fields });
}

function expectAskedAlone(answer: string, asked: SecretQuestion): void {
  expect(inLetters(answer), asked.name).toContain(asked.stem);
  expectNothingTold(answer, asked);
}

/** Nothing is told of any kind, whichever of them is asked on the page. */
function expectNothingTold(answer: string, asked?: SecretQuestion): void {
  const letters = inLetters(answer);
  const told = everySecret().flatMap(({ name, spec, secrets }) => [
    ...(answer.includes(spec.seed) ? [`${name}: ${spec.seed}`] : []),
    ...secrets.filter((secret) => letters.includes(secret) && !asked?.open.includes(secret)),
  ]);
  expect([...told, ...(TELLING.exec(answer) ?? [])], `while ${asked?.name ?? 'nothing'} is asked`).toEqual([]);
}
