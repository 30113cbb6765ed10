import type { NewPoolTask, PoolVersions } from '@/db/queries/pool-tasks';
import { GENERATOR_VERSION } from '@/lib/cases/case';
import { modelOf } from '@/lib/competency/evidence-of-question';
import { expectedOfCase, secondsAtCase } from '@/lib/competency/expected-of-case';
import type { PoolUse } from '@/lib/competency/pool';
import { DESIGN_SPREAD } from '@/lib/competency/response';
import { QUESTION_VERSION, type QuestionKindId, type QuestionSpec } from '@/lib/questions/question';
import { questionFromSeed } from '@/lib/questions/question-from-seed';
import { type FoundCase, findCase, type UnmetWish } from '@/lib/wishes/find-case';
import type { Wishes } from '@/lib/wishes/wishes';
import { catalogue } from '../catalogue';
import { randomId } from '../random-id';
import { poolSeed } from './pool-seed';

/** For what a task is made, and when. */
export interface Making {
  use: PoolUse;
  at: Date;
}

/** Under what tasks are worked out now. */
export function poolVersions(): PoolVersions {
  const { contentHash, questionHash } = catalogue();
  return {
    case: { contentHash, generatorVersion: GENERATOR_VERSION },
    question: { contentHash: questionHash, generatorVersion: QUESTION_VERSION },
  };
}

/** A case as wished, certified; or which wish cannot be met. */
export function makeCaseTask(wishes: Wishes, { use, at }: Making): NewPoolTask | UnmetWish {
  const id = randomId();
  const found = findCase(wishes, poolSeed(use, id), catalogue());
  return 'unmet' in found ? found : caseTask(found, { id, use, at });
}

/** A task of a case that was found already. */
export function caseTask(
  { case: theCase, certificate }: FoundCase,
  { id, use, at }: Making & { id: string },
): NewPoolTask {
  return {
    ...{ id, use, kind: 'case', caseCode: theCase.code, spec: null, addedAt: at },
    topics: expectedOfCase(theCase, certificate, catalogue()),
    difficulty: certificate.difficulty,
    features: certificate.features,
    seconds: secondsAtCase(certificate),
    ...poolVersions().case,
  };
}

/** @throws RangeError where no question of the kind can be drawn on the topic. */
export function makeQuestionTask(
  { kind, topic }: { kind: QuestionKindId; topic: string },
  { use, at }: Making,
): NewPoolTask {
  const id = randomId();
  const spec: QuestionSpec = { kind, topic, seed: poolSeed(use, id) };
  const question = questionFromSeed(spec, catalogue());
  const model = modelOf(question, { logits: question.difficulty, spread: DESIGN_SPREAD });
  return {
    ...{ id, use, kind: 'question', caseCode: null, spec, addedAt: at },
    topics: question.topics.map((own) => ({ topic: own, model })),
    difficulty: question.difficulty,
    features: question.features,
    seconds: question.seconds,
    ...poolVersions().question,
  };
}
