import type { Catalogue } from '../../catalogue';
import { targetsOn } from './targets-on';
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
  const targets = targetsOn(rig, body.right, catalogue);
  const unknownParts = body.right.flatMap(({ what, of }, index): WrittenFault[] =>
    targets.some((target) => target.what === what && target.of === of)
      ? []
      : [{ path: ['body', 'right', index], code: 'no-such-part', values: { part: of } }],
  );
  return [...unknownTopics, ...unknownParts];
}
