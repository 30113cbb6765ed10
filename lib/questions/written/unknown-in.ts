import type { Catalogue } from '../../catalogue';
import type { Rig } from '../../rig/rig';
import type { WrittenFault } from './written-faults';
import type { WrittenQuestion } from './written-question';

/** What a written question names that content does not have. */
export function unknownIn({ topics, body }: WrittenQuestion, catalogue: Catalogue): WrittenFault[] {
  const unknownTopics = topics.flatMap((topic, index): WrittenFault[] =>
    catalogue.topics.has(topic) ? [] : [{ path: ['topics', index], code: 'no-such-topic', values: { topic } }],
  );
  if (body.form !== 'point') return unknownTopics;
  const rig = catalogue.rigs.get(body.rig);
  if (!rig) return [...unknownTopics, { path: ['body', 'rig'], code: 'no-such-rig', values: { rig: body.rig } }];
  const unknownParts = body.right.flatMap(({ what, of }, index): WrittenFault[] =>
    hasPart(rig, what, of) ? [] : [{ path: ['body', 'right', index], code: 'no-such-part', values: { part: of } }],
  );
  return [...unknownTopics, ...unknownParts];
}

function hasPart({ elements, nodes, ports }: Rig, what: 'element' | 'node' | 'port', id: string): boolean {
  const all = { element: elements, node: nodes, port: ports }[what];
  return all.some((one) => one.id === id);
}
