import { askingQuestion } from '@/db/queries/sitting-questions';
import { together } from '@/db/together';
import { database } from '../database';
import type { Desk } from '../permit';
import { presentVersion } from '../questions/asked-question';
import { type Askable, askableOn, chooseNext, placeFor, practiceSeed } from './choose-question';
import { dueNow } from './due-now';
import { handIn } from './hand-in';
import { isOpen, type ReadSitting, readSitting } from './read-sitting';

/** Asks the next question of a drill or a review once the last is marked; ends a review in which nothing more is due. */
export async function askNext(desk: Desk, sittingId: string, now: Date): Promise<'not-there' | undefined> {
  const read = await readSitting(desk, sittingId);
  if (!read || read.sitting.mode === 'check') return 'not-there';
  if (!isOpen(read.sitting, now) || !read.places.at(-1)?.mark) return undefined;
  const next = await chosenFor(desk, read, now);
  if (!next) {
    await handIn(desk, read, now);
    return undefined;
  }
  const place = read.places.length + 1;
  const asked = { sittingId, place, ...placeFor(next, practiceSeed()), ...presentVersion(), askedAt: now };
  await together(database(), [askingQuestion(database(), asked)]);
  return undefined;
}

async function chosenFor(desk: Desk, { sitting, places }: ReadSitting, now: Date): Promise<Askable | undefined> {
  if (sitting.mode === 'review') return (await dueNow(desk, now)).now[0];
  return chooseNext(await askableOn(desk.organizationId, sitting.topics), places);
}
