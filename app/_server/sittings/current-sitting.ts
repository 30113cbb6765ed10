import { askingAnew } from '@/db/queries/sitting-questions';
import { together } from '@/db/together';
import { database } from '../database';
import type { Desk } from '../permit';
import { presentVersion } from '../questions/asked-question';
import { drawnAnew } from './choose-question';
import { handIn } from './hand-in';
import { isOpen, isOverdue, isPresent, type ReadSitting, readSitting, type SittingPlace } from './read-sitting';
import { assessedSeed, practiceSeed } from './seeds';

/**
 * A learner's own sitting as it stands now: handed in where its time is over, and with another question in the place of
 * each that content has changed since it was asked. Undefined when it is missing or someone else's.
 */
export async function currentSitting(desk: Desk, sittingId: string, now: Date): Promise<ReadSitting | undefined> {
  const read = await readSitting(desk, sittingId);
  if (!read) return undefined;
  const { sitting, places } = read;
  if (!sitting.handedInAt && isOverdue(sitting, now)) {
    await handIn(desk, sittingId, now);
    return readSitting(desk, sittingId);
  }
  const gone = isOpen(sitting, now) ? places.filter((place) => !place.mark && !isPresent(place)) : [];
  if (gone.length === 0) return read;
  await together(
    database(),
    gone.map((place) => askingAnew(database(), anew(read, place, now), place)),
  );
  return readSitting(desk, sittingId);
}

function anew({ sitting }: ReadSitting, { sittingId, place, ...asked }: SittingPlace, now: Date) {
  const present = presentVersion();
  const under = `${present.questionVersion} ${present.questionHash}`;
  const seed = sitting.mode === 'check' ? assessedSeed(sittingId, place, under) : practiceSeed();
  return { sittingId, place, ...drawnAnew(asked, seed), ...present, askedAt: now };
}
