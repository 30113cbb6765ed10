import { kinds } from '@/lib/questions/kinds';
import type { QuestionKindId } from '@/lib/questions/question';
import { questionFromSeed } from '@/lib/questions/question-from-seed';
import { catalogue } from '../support/bench-rig';
import { rounds, type Spread, spreadOf } from './spread';

/** Of each kind, over all of its topics in turn. */
const QUESTIONS = 30;
const ROUNDS = 4;

/** Milliseconds a question of each kind on one core, each drawn from a seed of its own. */
export function measureQuestions(): { kind: QuestionKindId; milliseconds: Spread }[] {
  return [...kinds.values()].map(({ id, topics }) => {
    const times = rounds(ROUNDS, (round) => {
      for (let index = 0; index < QUESTIONS; index++) {
        const topic = topics[index % topics.length];
        questionFromSeed({ kind: id, seed: `bench ${round} ${index}`, ...(topic && { topic }) }, catalogue);
      }
    });
    return { kind: id, milliseconds: spreadOf(times.map((time) => time / QUESTIONS)) };
  });
}
