import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import type { Cause } from '../faults/cause';
import { type Topic, topicsInOrder } from './topic';

type TopicCatalogue = Pick<Catalogue, 'topics' | 'causes'>;

/** Topics that cover the area of a cause, or of what is wrong in a case. For a case: a hint at its truth, so for the server alone. */
export function topicsOf(what: Cause | Case, catalogue: TopicCatalogue): Topic[] {
  const causes = 'truth' in what ? causesIn(what, catalogue) : [what];
  return topicsInOrder(catalogue).filter(({ areas }) => causes.some(({ area }) => areas.includes(area)));
}

/** Whether a case practises a topic: by what is wrong in it, or because every case does. */
export function practises(theCase: Case, topic: Topic, catalogue: TopicCatalogue): boolean {
  return topic.areas.length === 0 || topicsOf(theCase, catalogue).includes(topic);
}

/** What is wrong in a case, one cause or two. */
export function causesIn({ truth }: Pick<Case, 'truth'>, { causes }: Pick<Catalogue, 'causes'>): Cause[] {
  return [truth, truth.also].flatMap((fault) => (fault ? (causes.get(fault.cause) ?? []) : []));
}
