import { listLiveVersions } from '@/db/queries/written-questions';
import { type Askable, type Asked, nextAsked } from '@/lib/questions/next-asked';
import { kindsOn } from '@/lib/questions/question-from-seed';
import type { RandomStream } from '@/lib/random';
import { database } from '../database';
import type { AskedPlace } from '../questions/asked-question';

/** Something to be asked: a kind on a topic, or a version of a question that somebody wrote. */
export type Choice = { topic: string; asked: Asked };

/** What can be asked on each of some topics in an organisation. */
export async function askableOn(organizationId: string, topics: readonly string[]): Promise<Map<string, Askable>> {
  const live = await listLiveVersions(database(), organizationId);
  return new Map(
    topics.map((topic) => {
      const written = live.filter(({ body }) => body.topics.includes(topic)).map(({ id }) => id);
      return [topic, { kinds: kindsOn(topic), written }];
    }),
  );
}

/** What to ask next on a topic after what a sitting has asked; undefined where there is nothing. */
export function chooseOn(
  topic: string,
  askable: ReadonlyMap<string, Askable>,
  before: readonly Asked[],
  draw: RandomStream,
): Choice | undefined {
  const asked = nextAsked(askable.get(topic) ?? { kinds: [], written: [] }, before, draw);
  return asked && { topic, asked };
}

/** What a place asked, whatever its seed. */
export function askedAt({ spec, writtenVersionId }: AskedPlace): Asked {
  return spec ? { kind: spec.kind } : { written: writtenVersionId ?? '' };
}

/** A place for a choice, drawn from a seed. */
export function placeFor({ topic, asked }: Choice, seed: string): AskedPlace {
  if ('kind' in asked) return { spec: { kind: asked.kind, seed, topic }, writtenVersionId: null, seed };
  return { spec: null, writtenVersionId: asked.written, seed };
}

/** The same kind, or the same written question, drawn from another seed. */
export function drawnAnew({ spec, writtenVersionId }: AskedPlace, seed: string): AskedPlace {
  if (!spec) return { spec: null, writtenVersionId, seed };
  // Content may have taken the topic from the kind.
  const { topic = '', ...rest } = spec;
  return { spec: { ...rest, seed, ...(kindsOn(topic).includes(spec.kind) && { topic }) }, writtenVersionId, seed };
}
