import { createHmac, randomInt } from 'node:crypto';
import type { SittingQuestion } from '@/db/queries/sitting-questions';
import { listLiveVersions } from '@/db/queries/written-questions';
import type { QuestionKindId } from '@/lib/questions/question';
import { kindsOn } from '@/lib/questions/question-from-seed';
import { database } from '../database';
import type { AskedPlace } from '../questions/asked-question';
import { randomId } from '../random-id';
import { secret } from '../secret';

/** Something that can be asked on a topic: a kind, or a question that somebody wrote. */
export type Askable = { topic: string; kind: QuestionKindId } | { topic: string; writtenVersionId: string };

/** Everything that can be asked on topics in an organisation. */
export async function askableOn(organizationId: string, topics: readonly string[]): Promise<Askable[]> {
  const live = await listLiveVersions(database(), organizationId);
  return topics.flatMap((topic) => [
    ...kindsOn(topic).map((kind) => ({ topic, kind })),
    ...live.filter(({ body }) => body.topics.includes(topic)).map(({ id }) => ({ topic, writtenVersionId: id })),
  ]);
}

/**
 * What to ask next: what has been asked least in this sitting, and not what was asked last; among those, by chance.
 *
 * @param asked  In the order in which it was asked.
 */
export function chooseNext(
  askable: readonly Askable[],
  asked: readonly AskedPlace[],
  among: (count: number) => number = randomInt,
): Askable | undefined {
  const keys = asked.map(keyOfPlace);
  const last = keys.at(-1);
  const times = (one: Askable) => keys.filter((key) => key === keyOf(one)).length + (keyOf(one) === last ? 0.5 : 0);
  const least = Math.min(...askable.map(times));
  const possible = askable.filter((one) => times(one) === least);
  return possible.length > 0 ? possible[among(possible.length)] : undefined;
}

/** The same for an askable and for the place that asks it. */
export function keyOf(one: Askable): string {
  return 'kind' in one ? `${one.kind} ${one.topic}` : one.writtenVersionId;
}

function keyOfPlace({ spec, writtenVersionId }: AskedPlace): string {
  return spec ? `${spec.kind} ${spec.topic ?? ''}` : (writtenVersionId ?? '');
}

/** A place for something, drawn anew. */
export function placeFor(one: Askable, seed: string): AskedPlace {
  if ('kind' in one) return { spec: { kind: one.kind, seed, topic: one.topic }, writtenVersionId: null, seed };
  return { spec: null, writtenVersionId: one.writtenVersionId, seed };
}

/** A seed for practice. */
export const practiceSeed = randomId;

/** A seed that only this installation can draw, so that nobody reruns the question elsewhere from what they see. */
export function assessedSeed(sittingId: string, place: number): string {
  return createHmac('sha256', secret()).update(`question ${sittingId} ${place}`).digest('hex').slice(0, 20);
}

/** Places as they are asked of a sitting, drawn under the present version. */
export type PlaceRow = Pick<SittingQuestion, 'place'> & AskedPlace;
