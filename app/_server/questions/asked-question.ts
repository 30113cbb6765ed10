import { findVersion } from '@/db/queries/written-questions';
import type { Catalogue } from '@/lib/catalogue';
import { QUESTION_VERSION, type QuestionBody, type QuestionSpec } from '@/lib/questions/question';
import type { QuestionContent } from '@/lib/questions/question-content';
import { kindOf, questionFromSeed } from '@/lib/questions/question-from-seed';
import { questionFromWritten } from '@/lib/questions/written/question-from-written';
import { catalogue } from '../catalogue';
import { database } from '../database';
import { log } from '../log';

/** What a place of a sitting says of its question. */
export interface AskedPlace {
  spec: QuestionSpec | null;
  writtenVersionId: string | null;
  seed: string;
}

/** A question whole, with the words of its kind; none for a written one, which has its own. */
export interface AskedQuestion {
  question: QuestionBody;
  content: QuestionContent | undefined;
}

/** Under what a question is drawn now. */
export function presentVersion(): { questionVersion: number; questionHash: string } {
  return { questionVersion: QUESTION_VERSION, questionHash: catalogue().questionHash };
}

/** Questions drawn lately: a sitting asks for its own again and again. */
const drawn = new Map<string, QuestionBody>();
const MOST_DRAWN = 400;

/** The question that is asked at a place, as it is drawn now. @throws RangeError where a written version is gone. */
export async function askedQuestion({ spec, writtenVersionId, seed }: AskedPlace): Promise<AskedQuestion> {
  const all = catalogue();
  const key = JSON.stringify([spec, writtenVersionId, seed]);
  const question = drawn.get(key) ?? (await draw({ spec, writtenVersionId, seed }, all));
  drawn.delete(key);
  drawn.set(key, question);
  for (const oldest of drawn.keys()) if (drawn.size > MOST_DRAWN) drawn.delete(oldest);
  return { question, content: wordsOf(spec, all) };
}

/** The words that the lines of a question name. */
export function wordsOf(spec: QuestionSpec | null, all: Catalogue): QuestionContent | undefined {
  return spec ? kindOf(spec.kind, all).content : undefined;
}

async function draw({ spec, writtenVersionId, seed }: AskedPlace, all: Catalogue): Promise<QuestionBody> {
  if (spec) return drawGenerated(spec, all);
  const version = writtenVersionId ? await findVersion(database(), writtenVersionId) : undefined;
  if (!version) throw new RangeError(`There is no written version ${writtenVersionId}`);
  return questionFromWritten(version.body, seed, all);
}

/** Tests hold every kind to draw from every seed; a learner should not be stuck at the one that they missed. */
const TRIES = 5;

/** The question of a spec; where none can be drawn from its seed, of one that follows from it. */
function drawGenerated(spec: QuestionSpec, all: Catalogue): QuestionBody {
  for (let tried = 0; ; tried++) {
    try {
      return questionFromSeed(tried === 0 ? spec : { ...spec, seed: `${spec.seed} ${tried}` }, all);
    } catch (error) {
      if (!(error instanceof RangeError) || tried === TRIES - 1) throw error;
      log.error({ kind: spec.kind, topic: spec.topic, err: error }, 'No question could be drawn from a seed');
    }
  }
}
