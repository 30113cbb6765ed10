import { askingQuestion } from '@/db/queries/sitting-questions';
import { addingSitting, findSittingByKey, type SittingMode } from '@/db/queries/sittings';
import { claimThen } from '@/db/together';
import { database } from '../database';
import type { Desk } from '../permit';
import { type AskedPlace, presentVersion } from '../questions/asked-question';
import { randomId } from '../random-id';
import { type Askable, askableOn, assessedSeed, chooseNext, placeFor, practiceSeed } from './choose-question';
import { dueNow } from './due-now';

export interface NewSittingWish {
  desk: Desk;
  key: string;
  at: Date;
}

/** Starts a drill on a topic, or finds the one that the key has started. Undefined where there is nothing to ask on it. */
export async function startDrill(wish: NewSittingWish, topic: string): Promise<string | undefined> {
  const first = chooseNext(await askableOn(wish.desk.organizationId, [topic]), []);
  return (
    first && store(wish, { mode: 'drill', topics: [topic], closesAt: null }, () => [placeFor(first, practiceSeed())])
  );
}

/** Starts a review of what is due. Undefined where nothing is. */
export async function startReview(wish: NewSittingWish): Promise<string | undefined> {
  const [first] = (await dueNow(wish.desk, wish.at)).now;
  return first && store(wish, { mode: 'review', topics: [], closesAt: null }, () => [placeFor(first, practiceSeed())]);
}

export interface CheckWish {
  topics: readonly string[];
  questions: number;
  /** Null without a limit. */
  minutes: number | null;
}

/** Starts a check: every question is drawn at once, from seeds that only this installation can draw. */
export async function startCheck(
  wish: NewSittingWish,
  { topics, questions, minutes }: CheckWish,
): Promise<string | undefined> {
  const askable = await askableOn(wish.desk.organizationId, topics);
  const chosen = spread(askable, topics, questions);
  if (chosen.length === 0) return undefined;
  const closesAt = minutes === null ? null : new Date(wish.at.getTime() + minutes * 60_000);
  return store(wish, { mode: 'check', topics, closesAt }, (id) =>
    chosen.map((one, index) => placeFor(one, assessedSeed(id, index + 1))),
  );
}

/** The topics in turn, each with what it has been asked least with. */
function spread(askable: readonly Askable[], topics: readonly string[], count: number): Askable[] {
  const possible = topics.filter((topic) => askable.some((one) => one.topic === topic));
  const chosen: Askable[] = [];
  const asked: AskedPlace[] = [];
  for (let place = 0; place < count && possible.length > 0; place++) {
    const topic = possible[place % possible.length];
    const next = chooseNext(
      askable.filter((one) => one.topic === topic),
      asked,
    );
    if (!next) break;
    chosen.push(next);
    asked.push(placeFor(next, ''));
  }
  return chosen;
}

async function store(
  { desk, key, at }: NewSittingWish,
  { mode, topics, closesAt }: { mode: SittingMode; topics: readonly string[]; closesAt: Date | null },
  placesOf: (sittingId: string) => AskedPlace[],
): Promise<string> {
  const { learnerId, organizationId } = desk;
  const id = randomId();
  const sitting = { id, learnerId, organizationId, key, mode, topics, createdAt: at, closesAt };
  const asking = placesOf(id).map((place, index) =>
    askingQuestion(database(), { sittingId: id, place: index + 1, ...place, ...presentVersion(), askedAt: at }),
  );
  if (await claimThen(database(), addingSitting(database(), sitting), asking)) return id;
  const started = await findSittingByKey(database(), learnerId, key);
  if (!started) throw new Error('The sitting was neither stored nor found');
  return started.id;
}
