import {
  type BookedTurn,
  listBookedAssignments,
  listBookedTurns,
  listClassPlaces,
  listGiven,
  listLearners,
} from '@/db/queries/gradebook';
import { closesFor, takenUntil } from '@/lib/assignments/phase';
import type { Book, BookPerson } from '@/lib/gradebook/book';
import { cellOf } from '@/lib/gradebook/cell-of';
import { database } from '../database';
import { isNamed } from '../review/who';
import { settleTurns } from './settle-turns';

/** More people and assignments than one book shows. */
export const MOST_PEOPLE = 1000;
export const MOST_ASSIGNMENTS = 80;

/** A book with the classes that its people are in. */
export interface ReadBook extends Book {
  classes: readonly { id: string; name: string }[];
}

/** People × assignments of an organisation, as it stands. */
export async function readBook(organizationId: string, now: Date): Promise<ReadBook> {
  const db = database();
  await settleTurns(organizationId);
  const [learners, places, assignments] = await Promise.all([
    listLearners(db, organizationId, MOST_PEOPLE),
    listClassPlaces(db, organizationId),
    listBookedAssignments(db, organizationId, { now, limit: MOST_ASSIGNMENTS }),
  ]);
  const ids = assignments.map(({ id }) => id);
  const [given, turns] = await Promise.all([listGiven(db, ids), listBookedTurns(db, ids)]);
  const classesOf = grouped(places, ({ userId }) => userId);
  const turnsOf = grouped(turns, ({ assignmentId, learnerId }) => `${assignmentId} ${learnerId}`);
  const givenTo = givenPairs(given);
  const extraTimes = new Map(
    given.people.map(({ assignmentId, userId, extraTime }) => [`${assignmentId} ${userId}`, extraTime]),
  );
  const columns = await Promise.all(
    assignments.map(async (assignment) => ({ assignment, unseen: !(await isNamed(assignment, now)) })),
  );
  const people = learners.map(({ id, name }): BookPerson => {
    const classes = (classesOf.get(id) ?? []).map(({ classId }) => classId);
    const cells = columns.map(({ assignment, unseen }) => {
      const pair = `${assignment.id} ${id}`;
      const extraTime = extraTimes.get(pair) ?? 0;
      return cellOf(
        {
          unseen,
          closesAt: closesFor(assignment, extraTime),
          endsAt: takenUntil(assignment, extraTime),
          given: [id, ...classes].some((whom) => givenTo.has(`${assignment.id} ${whom}`)),
          turns: (turnsOf.get(pair) ?? []).map(turnLine),
        },
        now.getTime(),
      );
    });
    return { id, name, classes, cells };
  });
  return {
    people,
    assignments: assignments.map(({ id, title, closesAt }) => ({ id, title, closesAt: closesAt.getTime() })),
    classes: [...new Map(places.map(({ classId, name }) => [classId, { id: classId, name }])).values()],
  };
}

function turnLine({ id, number, handedInAt, total, waiting }: BookedTurn) {
  const at = handedInAt?.getTime() ?? null;
  return { id, number, handedIn: at !== null, handedInAt: at, total, waiting: waiting ?? 0 };
}

function givenPairs({ classes, people }: Awaited<ReturnType<typeof listGiven>>): Set<string> {
  return new Set([
    ...classes.map(({ assignmentId, classId }) => `${assignmentId} ${classId}`),
    ...people.filter(({ named }) => named).map(({ assignmentId, userId }) => `${assignmentId} ${userId}`),
  ]);
}

function grouped<T>(rows: readonly T[], keyOf: (row: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return groups;
}
