import type { Catalogue } from '../../catalogue';
import type { Check } from '../../checks/check';
import type { Rig } from '../../rig/rig';
import { topicsOfCheck } from './topics-of-check';

/** Checks that a rig has and, where a topic is named, that belong to it. */
export function checksOn(rig: Rig, { checks, topics }: Pick<Catalogue, 'checks' | 'topics'>, topic?: string): Check[] {
  return [...checks.values()].filter(
    ({ id, ports }) => ports[rig.id] && (topic === undefined || topicsOfCheck(id, { topics }).includes(topic)),
  );
}
