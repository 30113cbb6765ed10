import { askingQuestion } from '@/db/queries/sitting-questions';
import { addingSitting, findSittingByKey, type SittingMode } from '@/db/queries/sittings';
import { claimThen } from '@/db/together';
import { randomStream } from '@/lib/random';
import { database } from '../database';
import type { Desk } from '../permit';
import { type AskedPlace, presentVersion } from '../questions/asked-question';
import { randomId } from '../random-id';
import { nextReview } from './ask-next';
import { askableOn, chooseOn, placeFor } from './choose-question';
import { planCheck } from './plan-check';
import { reviewCards } from './review-cards';
import { assessedSeed, practiceSeed } from './seeds';

export interface SittingWish {
  desk: Desk;
  /** Made by the client: the same key again finds the sitting that it started. */
  key: string;
  at: Date;
  demo?: boolean;
}

/** Starts a drill on a topic. Undefined where there is nothing to ask on it. @returns its id. */
export async function startDrill(wish: SittingWish, topic: string): Promise<string | undefined> {
  const askable = await askableOn(wish.desk.organizationId, [topic]);
  const first = chooseOn(topic, askable, [], randomStream(practiceSeed(), 'first question'));
  return first && storeSitting(wish, { mode: 'drill', topics: [topic] }, () => [placeFor(first, practiceSeed())]);
}

/** Starts a review of what was asked before. Undefined where nothing was. @returns its id. */
export async function startReview(wish: SittingWish): Promise<string | undefined> {
  const first = nextReview(await reviewCards(wish.desk, wish.at), []);
  return first && storeSitting(wish, { mode: 'review', topics: [] }, () => [placeFor(first, practiceSeed())]);
}

export interface CheckWish {
  topics: readonly string[];
  questions: number;
  /** Null without a limit. */
  minutes: number | null;
}

/** Starts a check, all of its questions chosen at once. Undefined where there is nothing to ask. @returns its id. */
export async function startCheck(
  wish: SittingWish,
  { topics, questions, minutes }: CheckWish,
): Promise<string | undefined> {
  const askable = await askableOn(wish.desk.organizationId, topics);
  const closesAt = minutes === null ? null : new Date(wish.at.getTime() + minutes * 60_000);
  return storeSitting(wish, { mode: 'check', topics, closesAt }, (id) => {
    const plan = planCheck(askable, questions, randomStream(assessedSeed(id, 0, 'plan'), 'plan'));
    return plan.map((choice, index) => placeFor(choice, assessedSeed(id, index + 1, 'first')));
  });
}

/** Stores a sitting with its questions, or finds the one that the key has started. Undefined where there is nothing to ask. @returns its id. */
export async function storeSitting(
  { desk, key, at, demo = false }: SittingWish,
  { mode, topics, closesAt = null }: { mode: SittingMode; topics: readonly string[]; closesAt?: Date | null },
  placesOf: (sittingId: string) => readonly AskedPlace[],
): Promise<string | undefined> {
  const { learnerId, organizationId } = desk;
  const id = randomId();
  const places = placesOf(id);
  if (places.length === 0) return undefined;
  const sitting = { id, learnerId, organizationId, key, mode, topics, demo, createdAt: at, closesAt };
  const asking = places.map((place, index) =>
    askingQuestion(database(), { sittingId: id, place: index + 1, ...place, ...presentVersion(), askedAt: at }),
  );
  if (await claimThen(database(), addingSitting(database(), sitting), asking)) return id;
  const started = await findSittingByKey(database(), learnerId, key);
  if (!started) throw new Error('The sitting was neither stored nor found');
  return started.id;
}
