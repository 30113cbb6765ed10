import type { Desk } from '@/app/_server/permit';
import { askedQuestion } from '@/app/_server/questions/asked-question';
import { placeFor } from '@/app/_server/sittings/choose-question';
import { handIn } from '@/app/_server/sittings/hand-in';
import { planCheck } from '@/app/_server/sittings/plan-check';
import { storeSitting } from '@/app/_server/sittings/start-sitting';
import { takeReadAnswer } from '@/app/_server/sittings/take-answer';
import type { SittingMode } from '@/db/queries/sittings';
import type { Askable } from '@/lib/questions/next-asked';
import type { RandomStream } from '@/lib/random';
import { answerQuestion } from './answer-question';
import { minutesAfter } from './working-days';

/** Somebody at questions. */
export interface SittingPlay {
  /** The same again plays nothing new. */
  key: string;
  mode: SittingMode;
  /** What can be asked on each of the topics. */
  askable: ReadonlyMap<string, Askable>;
  questions: number;
  /** How often they know the answer, 0…1. */
  knows: number;
  startedAt: Date;
  /** Left open before the last question. */
  open?: boolean;
}

/** Minutes that a question takes. */
const THOUGHT = [0.5, 2] as const;

/** Answers questions through the doors that a learner's answers come in by, and hands them in. Returns the sitting's id. */
export async function playSitting(
  desk: Desk,
  { key, mode, askable, questions, knows, startedAt, open = false }: SittingPlay,
  draw: RandomStream,
): Promise<string> {
  const topics = [...askable.keys()];
  const wish = { desk, key, at: startedAt, demo: true };
  const places = planCheck(askable, questions, draw).map((choice) => placeFor(choice, drawnSeed(draw)));
  const sittingId = await storeSitting(wish, { mode, topics }, () => places);
  if (!sittingId) throw new Error(`The demo has nothing to ask on ${topics}`);
  let at = startedAt;
  for (const [index, place] of places.slice(0, open ? -1 : undefined).entries()) {
    at = minutesAfter(at, draw.between(...THOUGHT));
    const { question } = await askedQuestion(place);
    const answer = answerQuestion(question, draw.next() < knows, draw);
    const request = { desk, sittingId, place: index + 1, key: `${key}-${index + 1}`, at };
    const refused = await takeReadAnswer(request, answer);
    if (refused) throw new Error(`The demo does not answer: ${JSON.stringify(refused)}`);
  }
  if (!open) await handIn(desk, sittingId, at);
  return sittingId;
}

function drawnSeed(draw: RandomStream): string {
  return Array.from({ length: 20 }, () => Math.floor(draw.next() * 16).toString(16)).join('');
}
