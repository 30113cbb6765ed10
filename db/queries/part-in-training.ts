import { and, eq, exists, or, type SQL, sql } from 'drizzle-orm';
import type { Db } from '../client';
import {
  assignedClasses,
  assignedPeople,
  assignments,
  attempts,
  classPlaces,
  manualMarks,
  observations,
  overrides,
  secondMarks,
  sittings,
} from '../schema';

/** What somebody did for a learner's training or examination. */
export const trainingParts = ['taught', 'marked', 'observed'] as const;
export type TrainingPart = (typeof trainingParts)[number];

/** What of a learner's training and examination in an organisation somebody had a part in. */
export async function listTrainingParts(
  db: Db,
  { organizationId, personId, learnerId }: { organizationId: string; personId: string; learnerId: string },
): Promise<TrainingPart[]> {
  const one = { one: sql`1` };
  const theirSitting = and(eq(sittings.learnerId, learnerId), eq(sittings.organizationId, organizationId));
  const theirAttempt = and(eq(attempts.learnerId, learnerId), eq(attempts.organizationId, organizationId));
  const givenTo = or(
    exists(
      db
        .select(one)
        .from(assignedPeople)
        .where(and(eq(assignedPeople.assignmentId, assignments.id), eq(assignedPeople.userId, learnerId))),
    ),
    exists(
      db
        .select(one)
        .from(assignedClasses)
        .innerJoin(classPlaces, eq(classPlaces.classId, assignedClasses.classId))
        .where(and(eq(assignedClasses.assignmentId, assignments.id), eq(classPlaces.userId, learnerId))),
    ),
  );
  const taught = db
    .select(one)
    .from(assignments)
    .where(and(eq(assignments.organizationId, organizationId), eq(assignments.createdBy, personId), givenTo));
  const ofSitting = (table: typeof manualMarks | typeof secondMarks) =>
    db
      .select(one)
      .from(table as typeof manualMarks)
      .innerJoin(sittings, eq(sittings.id, table.sittingId))
      .where(and(theirSitting, eq(table.markedBy, personId)));
  const overridden = db
    .select(one)
    .from(overrides)
    .leftJoin(sittings, eq(sittings.id, overrides.sittingId))
    .leftJoin(attempts, eq(attempts.id, overrides.attemptId))
    .where(and(eq(overrides.givenBy, personId), or(theirSitting, theirAttempt)));
  const observed = db
    .select(one)
    .from(observations)
    .where(
      and(
        eq(observations.organizationId, organizationId),
        eq(observations.learnerId, learnerId),
        eq(observations.observedBy, personId),
      ),
    );
  const parts: Record<TrainingPart, SQL | undefined> = {
    taught: exists(taught),
    marked: or(exists(ofSitting(manualMarks)), exists(ofSitting(secondMarks)), exists(overridden)),
    observed: exists(observed),
  };
  const found = await Promise.all(trainingParts.map((part) => db.select(one).from(sql`(select 1)`).where(parts[part])));
  return trainingParts.filter((_, index) => (found[index]?.length ?? 0) > 0);
}
