import type { Catalogue } from '../../catalogue';
import type { Check } from '../../checks/check';
import type { Rig } from '../../rig/rig';

/** Checks that a rig has and, where a topic is named, that belong to it. */
export function checksOn(rig: Rig, { checks, topics }: Pick<Catalogue, 'checks' | 'topics'>, topic?: string): Check[] {
  const among = topic === undefined ? undefined : topics.get(topic)?.checks;
  const on = [...checks.values()].filter(({ ports }) => ports[rig.id]);
  return topic === undefined ? on : on.filter(({ id }) => among?.includes(id));
}
