import type { APIRequestContext } from '@playwright/test';
import { eq } from 'drizzle-orm';
import messages from '@/content/messages/en.json' with { type: 'json' };
import { attempts, sittingQuestions, turns } from '@/db/schema';
import { parseCaseCode } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { answerFields } from '../support/answer-fields';
import { catalogue } from '../support/bench-rig';
import { causeNames } from '../support/causes';
import { aSetBody } from '../support/teaching-rows';
import { rightCall } from '../support/worked-attempt';
import { assign, beginTurn, moveWindow, openCase, press } from './at-assignments';
import { anAnswerTo, questionOf, shared } from './at-questions';
import { expect, test } from './fixtures';
import { wholeBothWays } from './heard';
import { inLetters, secretQuestion } from './secret-words';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

/** Names that stand in an answer only where a grade, a truth or a key does. */
const TELLING = /expertRoute|callCorrect|"truth|severity|particle|\\?"(?:because|slips|explanation)/i;
/** A total. */
const TOTAL = /\d of 100/;

interface Work {
  assignmentId: string;
  turnId: string;
  attemptId: string;
  sittingId: string;
  code: string;
  /** Sentences that explain the answer, in letters. */
  secrets: readonly string[];
  seed: string;
}

test('of an assessed turn nothing is told while it runs or once it is handed in, and all of it once it has closed for everybody', async ({
  page,
}) => {
  const somebody = await somebodyNew('learner');
  await signInNew(page, somebody);
  const work = await begin(somebody);
  const running = await everything(page.request, work);
  const told = await workAndHandIn(somebody, work);
  const handedIn = await everything(page.request, work);
  expect(running.length).toBeGreaterThan(20);
  for (const answer of [...running, ...told, ...handedIn]) expectNothingTold(answer, work);
  const [questions = ''] = await wholeBothWays(page.request, ['/learn/questions']);
  expect(questions).toContain(messages.sittings.noneYet);

  await moveWindow(work.assignmentId, { opens: -120, closes: -60 });
  const after = await everything(page.request, work);
  const found = (what: (answer: string) => boolean) => after.filter(what).length;
  expect(found((answer) => answer.includes(work.code))).toBeGreaterThan(3);
  expect(found(namesOneCause)).toBeGreaterThan(1);
  expect(found((answer) => TELLING.test(answer))).toBeGreaterThan(0);
  expect(found((answer) => TOTAL.test(answer))).toBeGreaterThan(3);
  for (const secret of work.secrets) expect(found((answer) => inLetters(answer).includes(secret))).toBeGreaterThan(0);
  const [asked = ''] = await wholeBothWays(page.request, ['/learn/questions']);
  expect(asked).not.toContain(messages.sittings.noneYet);
});

test('a turn of practice tells at once', async ({ page }) => {
  const somebody = await somebodyNew('learner');
  await signInNew(page, somebody);
  const work = await begin(somebody, 'practice');
  await workAndHandIn(somebody, work);
  const after = await everything(page.request, work);
  expect(after.filter(namesOneCause).length).toBeGreaterThan(1);
  expect(after.filter((answer) => TOTAL.test(answer)).length).toBeGreaterThan(3);
});

async function begin(somebody: Somebody, mode: 'assessed' | 'practice' = 'assessed'): Promise<Work> {
  const body = aSetBody({
    title: 'Held back',
    items: [
      { id: 'a', kind: 'cases', count: 1, wishes: { rigs: ['tern-13'], topics: ['priming-and-lift-pump'] } },
      { id: 'b', kind: 'questions', count: 1, questionKind: 'judge', topic: 'filtration' },
    ],
  });
  const assignmentId = await assign({ to: [{ who: somebody }], body, rules: { mode } });
  const turnId = await beginTurn(somebody, assignmentId);
  const attemptId = await openCase(somebody, turnId);
  const [attempt] = await shared().select().from(attempts).where(eq(attempts.id, attemptId));
  const [turn] = await shared().select().from(turns).where(eq(turns.id, turnId));
  const sittingId = turn?.sittingId ?? '';
  const [asked] = await shared().select().from(sittingQuestions).where(eq(sittingQuestions.sittingId, sittingId));
  if (!asked?.spec || !attempt) throw new Error('Nothing is asked');
  const { secrets } = secretQuestion('asked', asked.spec);
  expect(secrets.length).toBeGreaterThan(0);
  return { assignmentId, turnId, attemptId, sittingId, code: attempt.caseCode, secrets, seed: asked.seed };
}

/** Does everything that can be done, rightly, and what must not help. @returns what each press was answered with. */
async function workAndHandIn(somebody: Somebody, { turnId, attemptId, sittingId, code }: Work): Promise<string[]> {
  const [asked] = await shared().select().from(sittingQuestions).where(eq(sittingQuestions.sittingId, sittingId));
  if (!asked?.spec) throw new Error('Nothing is asked');
  const parsed = parseCaseCode(code, catalogue);
  if ('error' in parsed) throw new Error(parsed.error);
  const { cause, repair, proof } = rightCall(caseFromSeed(parsed.spec, catalogue), 1);
  const at = {
    case: `/learn/cases/${attemptId}`,
    sitting: `/learn/sittings/${sittingId}`,
    turn: `/learn/turns/${turnId}`,
  };
  const hookUp = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' };
  const call = { attemptId, cause, repair, proof: `${proof.check}|${proof.condition}` };
  const presses: [string, string, Record<string, string | readonly string[]>][] = [
    [at.case, 'takeReading', { attemptId, ...hookUp }],
    [at.sitting, 'saveAnswer', { sittingId, place: '1', ...answerFields(anAnswerTo(questionOf(asked.spec))) }],
    [at.case, 'callCase', call],
    [at.case, 'askForHint', { attemptId }],
    [`${at.case}/debrief`, 'startAlike', { attemptId, likeness: 'family' }],
    [at.turn, 'handInTurn', { turnId }],
    [`${at.case}/debrief`, 'startAlike', { attemptId, likeness: 'family' }],
    ['/learn', 'startCaseByCode', { code }],
  ];
  const answers: string[] = [];
  for (const [path, name, fields] of presses) {
    const { status, text, goesTo } = await press(somebody, path, name, fields);
    expect(status, `${name}: ${text.slice(0, 200)}`).toBeLessThan(500);
    answers.push(`${name} ${goesTo} ${text}`.replaceAll(code, name === 'startCaseByCode' ? 'CODE' : code));
  }
  return answers;
}

/** Every address that may show something of the work, as a document and as the payload that the router fetches. */
async function everything(request: APIRequestContext, work: Work): Promise<string[]> {
  const { assignmentId, turnId, attemptId, sittingId } = work;
  const own = ['/learn', '/learn/questions', '/learn/topics', '/learn/progress'];
  const held = ['/me', '/me/export/json', '/me/export/csv'];
  const [theCase, sitting] = [`/learn/cases/${attemptId}`, `/learn/sittings/${sittingId}`];
  return wholeBothWays(request, [
    ...own,
    ...held,
    `/learn/assignments/${assignmentId}`,
    `/learn/turns/${turnId}`,
    `/learn/turns/${turnId}/messages`,
    theCase,
    `${theCase}?reading=1`,
    `${theCase}?check=prime-pressure`,
    `${theCase}/debrief`,
    sitting,
    `${sitting}?at=1`,
  ]);
}

function expectNothingTold(answer: string, { code, secrets, seed }: Work): void {
  const from = answer.slice(0, 80);
  expect(namesOneCause(answer), from).toBe(false);
  expect(answer).not.toMatch(TELLING);
  expect(answer).not.toMatch(TOTAL);
  expect(answer).not.toContain(code);
  expect(answer).not.toContain(seed);
  const letters = inLetters(answer);
  expect(
    secrets.filter((secret) => letters.includes(secret)),
    from,
  ).toEqual([]);
}

/** Whether one cause stands there oftener than another, as it does not in a list of all choices. */
function namesOneCause(answer: string): boolean {
  return (['id', 'name'] as const).some(
    (key) => new Set(causeNames().map((cause) => answer.split(cause[key]).length)).size > 1,
  );
}
