import type { PoolTopic } from '../competency/pool';
import { highestScore } from '../competency/task-model';
import type { PanelTask } from './panel';
import type { Scheme } from './scheme';

/** A task that a panel may be given. */
export interface PanelCandidate {
  id: string;
  kind: PanelTask['kind'];
  topics: readonly PoolTopic[];
}

/**
 * What a panel judges: so many tasks, each topic of the blueprint by its share, cases and questions in turn as far as there are
 * any. Candidates come in the order in which they are taken.
 */
export function panelTasks(
  { blueprint }: Pick<Scheme, 'blueprint'>,
  candidates: readonly PanelCandidate[],
  count: number,
): PanelTask[] {
  const taken = new Set<string>();
  return blueprint.flatMap(({ topic, share }) => {
    const wanted = Math.max(1, Math.round(share * count));
    const chosen: PanelTask[] = [];
    for (let at = 0; at < wanted; at++) {
      const kinds = at % 2 === 0 ? (['case', 'question'] as const) : (['question', 'case'] as const);
      const found = kinds.map((kind) => candidateOn(topic, kind, candidates, taken)).find((one) => one !== undefined);
      if (!found) break;
      taken.add(found.poolTaskId);
      chosen.push(found);
    }
    return chosen;
  });
}

function candidateOn(
  topic: string,
  kind: PanelTask['kind'],
  candidates: readonly PanelCandidate[],
  taken: ReadonlySet<string>,
): PanelTask | undefined {
  for (const one of candidates) {
    const model = one.topics.find((touched) => touched.topic === topic)?.model;
    if (one.kind !== kind || !model || taken.has(one.id)) continue;
    return { poolTaskId: one.id, kind, topic, model, outOf: highestScore(model) };
  }
  return undefined;
}
