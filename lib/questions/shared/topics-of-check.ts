import type { Catalogue } from '../../catalogue';
import { topicsInOrder } from '../../topics/topic';

/** Ids of the topics that a check belongs to. */
export function topicsOfCheck(check: string, catalogue: Pick<Catalogue, 'topics'>): string[] {
  return topicsInOrder(catalogue).flatMap(({ id, checks }) => (checks.includes(check) ? [id] : []));
}
