import { randomBytes } from 'node:crypto';
import type { Locator, Page } from '@playwright/test';
import { answerQuestion } from '@/app/_cli/demo/answer-question';
import { presentVersion } from '@/app/_server/questions/asked-question';
import type { Db } from '@/db/client';
import { askingQuestion } from '@/db/queries/sitting-questions';
import { addingSitting, type NewSitting } from '@/db/queries/sittings';
import { addingDraft, addingWrittenQuestion } from '@/db/queries/written-questions';
import { together } from '@/db/together';
import type { Answer } from '@/lib/questions/answer';
import { kinds } from '@/lib/questions/kinds';
import { type QuestionBody, type QuestionKindId, type QuestionSpec, questionKindIds } from '@/lib/questions/question';
import { questionFromSeed } from '@/lib/questions/question-from-seed';
import type { WrittenQuestion } from '@/lib/questions/written/written-question';
import { randomStream } from '@/lib/random';
import { catalogue } from '../support/bench-rig';
import { formsOfKinds } from '../support/forms-of-kinds';
import { harbour, people } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expect } from './fixtures';

let opened: Db | undefined;

/** The database of the server that most browser tests share. */
export function shared(): Db {
  opened ??= openPlace(placeFor(SHARED_PORT));
  return opened;
}

/** A place of a sitting to be opened: a generated question, or a version of a written one. */
export type Asked = QuestionSpec | { writtenVersionId: string; seed: string };

/** A sitting put straight into the shared database, the learner's unless said otherwise. @returns its id. */
export async function openSitting(asked: readonly Asked[], changes: Partial<NewSitting> = {}): Promise<string> {
  const id = randomBytes(10).toString('hex');
  const at = new Date();
  const whose = { learnerId: people.learner.id, organizationId: harbour.id };
  const sitting = { id, key: id, ...whose, mode: 'drill', topics: [], createdAt: at, ...changes } as const;
  await together(shared(), [
    addingSitting(shared(), sitting),
    ...asked.map((one, index) =>
      askingQuestion(shared(), { sittingId: id, place: index + 1, ...placeOf(one), ...presentVersion(), askedAt: at }),
    ),
  ]);
  return id;
}

function placeOf(asked: Asked) {
  if ('kind' in asked) return { spec: asked, writtenVersionId: null, seed: asked.seed };
  return { spec: null, ...asked };
}

/** A version of a written question of the harbour's. @returns its id. */
export async function addWritten(body: WrittenQuestion): Promise<string> {
  const [questionId, id] = [randomBytes(10).toString('hex'), randomBytes(10).toString('hex')];
  const [writtenBy, at] = [people.instructor.id, new Date()];
  await together(shared(), [
    addingWrittenQuestion(shared(), {
      id: questionId,
      organizationId: harbour.id,
      createdBy: writtenBy,
      createdAt: at,
    }),
    addingDraft(shared(), { id, questionId, number: 1, body, writtenBy, at }),
  ]);
  return id;
}

/** A question of a kind, answered in one way where it has several. */
export function aSpec(kind: QuestionKindId, form?: QuestionBody['answer']['form'], word = 'e2e'): QuestionSpec {
  const topics = kinds.get(kind)?.topics ?? [];
  for (let n = 0; n < 60; n++) {
    const spec = { kind, seed: `${word}-${n}`, topic: topics[n % topics.length] ?? '' };
    if (!form || questionOf(spec).answer.form === form) return spec;
  }
  throw new Error(`No question of the kind ${kind} is answered as ${form}`);
}

export function questionOf(spec: QuestionSpec): QuestionBody {
  return questionFromSeed(spec, catalogue);
}

/** Every kind, in every way that it is answered in. Not drawn yet: some take half a second. */
export const kindsAndForms = questionKindIds.flatMap((kind) =>
  formsOfKinds[kind].map((form) => ({ name: `${kind} as ${form}`, kind, form })),
);

/** A right answer, or another one. */
export function anAnswerTo(question: QuestionBody, right = true): Answer {
  return answerQuestion(question, right, randomStream('e2e', 'answer'));
}

/** Gives an answer on the screen, without sending it. An order is left as it lies. */
export async function give(page: Page, answer: Answer): Promise<void> {
  const form = page
    .locator('form')
    .filter({ has: page.locator('input[name=place]') })
    .first();
  switch (answer.form) {
    case 'choice':
      return check(form, 'option', answer.option);
    case 'several':
      for (const option of answer.options) await check(form, 'options', option);
      return;
    case 'numbers':
      for (const [id, { value, unit }] of Object.entries(answer.parts)) {
        await form.locator(`[name="value.${id}"]`).fill(String(Number(value.toPrecision(6))));
        const units = form.locator(`select[name="unit.${id}"]`);
        if (unit && (await units.count()) > 0) await units.selectOption(unit);
      }
      return;
    case 'point':
      return check(form, 'target', answer.target);
    case 'grid':
      for (const [row, column] of Object.entries(answer.cells)) await check(form, `cell.${row}`, column);
      return;
    case 'stretch':
      return check(form, 'stretch', answer.stretch);
    case 'spot':
      return check(form, 'shape', answer.shape);
    case 'words':
      return form.locator('[name=text]').fill(answer.text);
    case 'order':
      return;
  }
}

async function check(form: Locator, name: string, value: string): Promise<void> {
  const input = form.locator(`input[name="${name}"][value="${value}"]`);
  const select = form.locator(`select[name="${name}"]`);
  if ((await select.count()) > 0) await select.selectOption(value);
  // What lies over a picture may be covered by another; the keyboard gets there.
  else await input.check({ force: true });
}

/** Answers the question of a drill and waits for its mark. */
export async function answerDrill(page: Page, answer: Answer): Promise<void> {
  await give(page, answer);
  await page.getByRole('button', { name: 'Answer', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'How it comes about' })).toBeVisible();
}
