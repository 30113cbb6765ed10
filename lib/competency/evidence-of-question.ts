import type { QuestionBody } from '../questions/question';
import { type Derived, type Difficulty, type Response, stepsAround, stepsReached } from './response';
import type { TaskModel } from './task-model';

/** Why a question tests its topics: it was answered, or passed over where it had to be answered. */
export type QuestionReason = 'answered' | 'passed-over';

/** A question with the points that count for it. */
export interface GradedQuestion {
  asked: Pick<QuestionBody, 'topics' | 'steps' | 'guessFloor' | 'answer'>;
  answered: boolean;
  /** Of 0…steps, with changes for everybody and what people gave; null while a person has to mark it. */
  points: number | null;
}

/** What a marked question tells: one response on each of its topics; nothing while a person has still to mark it. */
export function evidenceOfQuestion(
  { asked, answered, points }: GradedQuestion,
  difficulty: Difficulty,
  response: Response,
): Derived[] {
  if (points === null) return [];
  const model = modelOf(asked, difficulty);
  const most = model.kind === 'choice' ? 1 : model.steps.length;
  const share = Math.min(1, Math.max(0, points / asked.steps));
  const because: QuestionReason = answered ? 'answered' : 'passed-over';
  return [...new Set(asked.topics)].sort().map((topic) => ({
    ...response,
    topic,
    source: 'question',
    score: stepsReached(share, most),
    model,
    safetyEvents: 0,
    detail: { findings: [], share, because },
  }));
}

/** Right or wrong with what guessing brings; by its steps where more than one can be told apart. */
export function modelOf(
  { steps, guessFloor }: Pick<GradedQuestion['asked'], 'steps' | 'guessFloor'>,
  difficulty: Difficulty,
): TaskModel {
  if (steps > 1) return stepsAround(difficulty, steps);
  return { kind: 'choice', difficulty: difficulty.logits, floor: guessFloor, spread: difficulty.spread };
}
