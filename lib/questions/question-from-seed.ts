import type { Catalogue } from '../catalogue';
import { randomStream } from '../random';
import type { QuestionKind } from './kind';
import { kinds } from './kinds';
import type { GeneratedQuestion, QuestionKindId, QuestionSpec } from './question';
import { designDifficulty, type QuestionContent } from './question-content';

/**
 * The question that a spec stands for: the same on any machine for the same content and version.
 *
 * @throws RangeError when the spec names a kind, rig or topic that there is not, or that do not go together.
 */
export function questionFromSeed(spec: QuestionSpec, catalogue: Catalogue): GeneratedQuestion {
  const { kind, content } = kindOf(spec.kind, catalogue);
  if (spec.topic !== undefined && !kind.topics.includes(spec.topic))
    throw new RangeError(`No question of kind ${spec.kind} on the topic ${spec.topic}`);
  const rig = chooseRig(kind, spec, catalogue);
  const body = kind.make({
    seed: spec.seed,
    rig,
    topic: spec.topic,
    ranges: kind.ranges.parse(content.ranges),
    catalogue,
    stream: (name) => randomStream(spec.seed, `question ${spec.kind} ${name}`),
  });
  return { ...body, difficulty: designDifficulty(content, body.features), spec, rig: rig.id };
}

/** @throws RangeError when there is no such kind or content has no words for it. */
export function kindOf(id: QuestionKindId, { questions }: Catalogue): { kind: QuestionKind; content: QuestionContent } {
  const [kind, content] = [kinds.get(id), questions.get(id)];
  if (!kind || !content) throw new RangeError(`There is no kind of question called ${id}`);
  return { kind, content };
}

/** Kinds that have questions on a topic, in the order of the list. */
export function kindsOn(topic: string): QuestionKindId[] {
  return [...kinds.values()].filter(({ topics }) => topics.includes(topic)).map(({ id }) => id);
}

function chooseRig(kind: QuestionKind, { seed, rig }: QuestionSpec, catalogue: Catalogue) {
  const possible = kind.rigs?.(catalogue) ?? [...catalogue.rigs.keys()];
  const id = rig ?? randomStream(seed, `question ${kind.id} rig`).pick(possible);
  const found = catalogue.rigs.get(id);
  if (!found) throw new RangeError(`Content has no rig ${id}`);
  if (!possible.includes(id)) throw new RangeError(`No question of kind ${kind.id} on the rig ${id}`);
  return found;
}
