import type { Db } from '@/db/client';
import { findObservationSource } from '@/db/queries/evidence-sources';
import { evidenceOfObservation } from '@/lib/competency/evidence-of-observation';
import type { Derived } from '@/lib/competency/response';
import { deriveCase } from './derive-case';
import { deriveQuestion } from './derive-question';
import { workOf } from './work-of';

/** What some work tells now. @param work  As it is named in the log. */
export async function deriveEvidence(db: Db, learnerId: string, work: string): Promise<Derived[]> {
  const { kind, id, place } = workOf(work);
  if (kind === 'attempt') return deriveCase(db, learnerId, id);
  if (kind === 'observation') return deriveObservation(db, learnerId, id);
  if (kind === 'sitting') return deriveQuestion(db, learnerId, id, Number(place));
  throw new RangeError(`Unknown work in the list of what is owed: ${work}`);
}

async function deriveObservation(db: Db, learnerId: string, observationId: string): Promise<Derived[]> {
  const seen = await findObservationSource(db, learnerId, observationId);
  if (!seen) return [];
  const response = {
    work: `observation ${observationId}`,
    counts: seen.takenBackAt === null,
    hints: 0,
    exposure: `observation ${observationId}`,
    purpose: 'observed' as const,
    at: seen.observedAt.getTime(),
    versions: { content: '', generator: 0 },
  };
  return evidenceOfObservation(seen, response);
}
