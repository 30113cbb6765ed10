import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import type { Certificate } from '../diagnosis/certificate';
import { topicsInOrder } from '../topics/topic';
import { causesIn } from '../topics/topics-of';
import type { PoolTopic } from './pool';
import { DESIGN_SPREAD, stepsAround } from './response';

/** Highest score of a case on a topic. */
const MOST = 4;

/**
 * What a case is expected to tell, before anybody works it: a response on each topic that every case practises, that covers what
 * is wrong, or whose checks the expert makes. Which of them a learner's work really tells is for `evidenceOfCase`.
 */
export function expectedOfCase(
  theCase: Case,
  { route, difficulty }: Pick<Certificate, 'route' | 'difficulty'>,
  catalogue: Pick<Catalogue, 'topics' | 'causes'>,
): PoolTopic[] {
  const model = stepsAround({ logits: difficulty, spread: DESIGN_SPREAD }, MOST);
  const wrong = causesIn(theCase, catalogue);
  const tells = topicsInOrder(catalogue).filter(
    ({ everyCase, areas, checks }) =>
      everyCase.length > 0 ||
      wrong.some(({ area }) => areas.includes(area)) ||
      route.steps.some(({ check }) => checks.includes(check)),
  );
  return tells.map(({ id }) => ({ topic: id, model }));
}

/** Seconds at the screen: to read the work order, to make a check with its finding, to decide on the call. @source Assumed. */
const SECONDS = { begin: 90, check: 60, call: 60 } as const;

/** How long somebody who knows takes at a case. */
export function secondsAtCase({ route }: Pick<Certificate, 'route'>): number {
  return SECONDS.begin + SECONDS.check * route.steps.length + SECONDS.call;
}
