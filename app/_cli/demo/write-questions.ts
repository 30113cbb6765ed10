import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { randomId } from '@/app/_server/random-id';
import { addingLogEntry } from '@/db/queries/log-entries';
import { listNamesHolding } from '@/db/queries/names';
import {
  addingDraft,
  addingWrittenQuestion,
  approvingVersion,
  sendingForReview,
  type VersionAct,
} from '@/db/queries/written-questions';
import { claimThen, type Statement } from '@/db/together';
import type { LogEvent } from '@/lib/accounts/log-events';
import { unknownIn } from '@/lib/questions/written/unknown-in';
import { type WrittenQuestion, writtenQuestionSchema } from '@/lib/questions/written/written-question';
import { minutesAfter, workingDays } from './working-days';

/** When the first question is handed to review, in minutes after midnight; how long the next takes, and a colleague to look at it. */
const WRITTEN = 9 * 60;
const EVERY = 30;
const LOOKING = 15;

const questionsSchema = z.array(
  z.strictObject({
    /** Which of the instructors, by name; the other one reviews it. */
    writer: z.union([z.literal(0), z.literal(1)]),
    question: writtenQuestionSchema,
  }),
);

/** Questions of the invented school. @throws where content has something else in them. */
export function loadDemoQuestions(): z.infer<typeof questionsSchema> {
  const file = join(process.cwd(), 'content/demo/questions.json');
  const questions = questionsSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
  const unknown = questions.flatMap(({ question }) => unknownIn(question, catalogue()));
  if (unknown.length > 0) throw new Error(`${file} names what content does not have: ${JSON.stringify(unknown)}`);
  return questions;
}

/** Has the instructors of a demo write questions, and each approve those of the other. Returns how many are live. */
export async function writeQuestions(organizationId: string, now: Date): Promise<number> {
  const instructors = await listNamesHolding(database(), organizationId, ['instructor']);
  const day = workingDays(now, 1)[0] ?? now;
  const questions = loadDemoQuestions();
  for (const [index, { writer, question }] of questions.entries()) {
    const [writtenBy, reviewedBy] = [instructors[writer]?.id, instructors[1 - writer]?.id];
    if (!writtenBy || !reviewedBy) throw new Error('A demo with questions needs two instructors');
    const written = { personId: writtenBy, at: minutesAfter(day, WRITTEN + index * EVERY) };
    const reviewed = { personId: reviewedBy, at: minutesAfter(written.at, LOOKING) };
    await bringLive(organizationId, question, written, reviewed);
  }
  return questions.length;
}

type Doing = Pick<VersionAct, 'personId' | 'at'>;

/** The way that a question goes on the screens, step by step. @throws where a step is refused. */
async function bringLive(organizationId: string, body: WrittenQuestion, written: Doing, reviewed: Doing) {
  const db = database();
  const named = { questionId: randomId(), versionId: randomId() };
  const { questionId, versionId } = named;
  const told = (event: LogEvent, { personId, at }: Doing) =>
    addingLogEntry(db, {
      at,
      organizationId,
      actorId: personId,
      event,
      details: { question: questionId, version: versionId },
    });
  const { personId, at } = written;
  const draft = { id: versionId, questionId, number: 1, body, writtenBy: personId, at };
  const question = { id: questionId, organizationId, createdBy: personId, createdAt: at };
  const steps: [Statement, ...Statement[]][] = [
    [addingWrittenQuestion(db, question), addingDraft(db, draft), told('question-written', written)],
    [sendingForReview(db, { ...named, ...written }), told('question-sent', written)],
    [approvingVersion(db, { ...named, ...reviewed }), told('question-approved', reviewed)],
  ];
  for (const [claim, ...others] of steps)
    if (!(await claimThen(db, claim, others))) throw new Error(`The demo does not write: ${body.title}`);
}
