import type { Catalogue } from '../catalogue';
import type { SafetyEvent } from '../grading/grade';
import { type Topic, topicsInOrder } from '../topics/topic';
import { everyCasePieces } from './every-case';
import { type GradedCase, meanShare, type Parts, partsOf } from './pieces-of-case';
import { type Derived, type Difficulty, type Response, stepsAround } from './response';
import { type Told, toldByLooking } from './told-by-looking';

/** Highest score of a case on a topic. */
const MOST = 4;
/** What something dangerous holds the score of the topics concerned down to. */
const UNSAFE = 1;

/**
 * What a called case tells: one response, scored 0…4, on each topic that it tests. The rule in words stands in `DEVELOPERS.md`,
 * "How evidence comes about".
 *
 * @param bands  Shares in hundredths from which the score is 1, 2, 3 and 4: those of the rubric that it was graded by.
 */
export function evidenceOfCase(
  graded: GradedCase,
  { difficulty, bands }: { difficulty: Difficulty; bands: readonly [number, number, number, number] },
  response: Response,
  catalogue: Pick<Catalogue, 'topics' | 'causes'>,
): Derived[] {
  const model = stepsAround(difficulty, MOST);
  const parts = partsOf(graded);
  const safetyEvents = graded.grade.safetyEvents.length;
  return topicsInOrder(catalogue).flatMap((topic): Derived[] => {
    const told = toldOf(topic, graded, parts, catalogue);
    if (!told) return [];
    const reached = bands.filter((from) => 100 * told.share >= from - 1e-9).length;
    const score = isUnsafe(topic, graded, parts) ? Math.min(UNSAFE, reached) : reached;
    return [{ ...response, topic: topic.id, source: 'case', score, model, safetyEvents, detail: told }];
  });
}

function toldOf(
  topic: Topic,
  graded: GradedCase,
  parts: Parts,
  catalogue: Pick<Catalogue, 'causes'>,
): (Omit<Told, 'because'> & { because: Told['because'] | 'every-case' }) | undefined {
  if (topic.everyCase.length === 0) return toldByLooking(topic, graded, parts, catalogue);
  const pieces = everyCasePieces(topic.everyCase, graded, parts);
  return pieces.length === 0 ? undefined : { share: meanShare(pieces), findings: [], because: 'every-case' };
}

/** Something dangerous concerns the topic of safe work, that of the instruments where one was lost, and those whose check it was. */
function isUnsafe(topic: Topic, { grade, readings }: GradedCase, parts: Parts): boolean {
  // Whoever gave practice its points looked at what happened.
  if (parts.given('practice') !== undefined) return false;
  return grade.safetyEvents.some((event) => concerns(topic, event, readings));
}

function concerns({ everyCase, checks }: Topic, { seq, code }: SafetyEvent, readings: GradedCase['readings']): boolean {
  if (everyCase.length > 0)
    return everyCase.includes('practice') || (everyCase.includes('instruments') && code !== 'high-pressure-jet');
  return readings.some((reading) => reading.seq === seq && checks.includes(reading.check));
}
