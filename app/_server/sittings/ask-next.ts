import { recordNextQuestion } from '@/db/queries/sitting-questions';
import { randomStream } from '@/lib/random';
import { database } from '../database';
import type { Desk } from '../permit';
import { presentVersion } from '../questions/asked-question';
import { askableOn, askedAt, type Choice, chooseOn, placeFor } from './choose-question';
import { currentSitting } from './current-sitting';
import { isOpen, type ReadSitting } from './read-sitting';
import { reviewCards } from './review-cards';
import { practiceSeed } from './seeds';

/** Asks the next question of a drill or a review once the last one is marked. @returns undefined when one is asked. */
export async function askNext(
  desk: Desk,
  sittingId: string,
  now: Date,
): Promise<{ error: 'not-there' | 'sitting-closed' | 'nothing-to-ask' } | undefined> {
  const read = await currentSitting(desk, sittingId, now);
  if (!read || read.sitting.mode === 'check') return { error: 'not-there' };
  if (!isOpen(read.sitting, now)) return { error: 'sitting-closed' };
  if (!read.places.at(-1)?.mark) return undefined;
  const next = await chooseNext(desk, read, now);
  if (!next) return { error: 'nothing-to-ask' };
  const place = read.places.length + 1;
  const asked = placeFor(next, practiceSeed());
  await recordNextQuestion(database(), desk.learnerId, {
    sittingId,
    place,
    ...asked,
    ...presentVersion(),
    askedAt: now,
  });
  return undefined;
}

async function chooseNext(desk: Desk, { sitting, places }: ReadSitting, now: Date): Promise<Choice | undefined> {
  if (sitting.mode === 'review') return nextReview(await reviewCards(desk, now), places);
  const draw = randomStream(practiceSeed(), 'next question');
  const [topic = ''] = sitting.topics;
  return chooseOn(topic, await askableOn(desk.organizationId, sitting.topics), places.map(askedAt), draw);
}

/** The longest overdue; where nothing is due, the least remembered that this sitting has asked least. */
export function nextReview(
  { due, others }: Pick<Awaited<ReturnType<typeof reviewCards>>, 'due' | 'others'>,
  places: ReadSitting['places'],
): Choice | undefined {
  if (due.length > 0) return due[0];
  const times = (choice: Choice) => places.filter((place) => isSame(choice, place)).length;
  const least = Math.min(...others.map(times));
  return others.find((choice) => times(choice) === least);
}

function isSame({ topic, asked }: Choice, { spec, writtenVersionId }: ReadSitting['places'][number]): boolean {
  if ('written' in asked) return asked.written === writtenVersionId;
  return asked.kind === spec?.kind && topic === spec.topic;
}
