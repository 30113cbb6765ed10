import type { Db } from '@/db/client';
import { assignedClasses, classes, classPlaces, members, turnResults, turns, users } from '@/db/schema';
import { randomStream } from '@/lib/random';
import { addAssignment, addSet } from './teaching-rows';

const DAY = 86_400_000;
const first = Date.UTC(2025, 0, 6, 8);

/** Invented learners in one class, assignments that it was given, and a finished turn of nearly everybody at each. */
export async function fillBook(
  db: Db,
  {
    organizationId,
    createdBy,
    learners,
    assignments,
  }: Record<'organizationId' | 'createdBy', string> & Record<'learners' | 'assignments', number>,
): Promise<void> {
  const draw = randomStream('book rows', `${learners} × ${assignments}`);
  const createdAt = new Date(first);
  const classId = `class of ${organizationId}`;
  await db.insert(classes).values({ id: classId, organizationId, name: 'The whole book', createdAt });
  const ids = Array.from(
    { length: learners },
    (_, index) => `${organizationId} learner ${String(index).padStart(4, '0')}`,
  );
  await inPieces(ids, (some) =>
    db.insert(users).values(
      some.map((id) => ({
        id,
        name: nameOf(id),
        email: `${id.replaceAll(' ', '-')}@book.invalid`,
        createdAt,
        updatedAt: createdAt,
      })),
    ),
  );
  await inPieces(ids, (some) =>
    db.insert(members).values(some.map((id) => ({ id, organizationId, userId: id, role: 'learner', createdAt }))),
  );
  await inPieces(ids, (some) =>
    db.insert(classPlaces).values(some.map((userId) => ({ classId, userId, joinedAt: createdAt }))),
  );
  const { versionId } = await addSet(db, { id: `set of ${organizationId}`, organizationId, createdBy });
  for (let number = 1; number <= assignments; number++) {
    const id = `${organizationId} assignment ${String(number).padStart(2, '0')}`;
    const opensAt = new Date(first + number * 3 * DAY);
    const closesAt = new Date(opensAt.getTime() + 7 * DAY);
    const title = `Week ${number}: ${['supply side', 'filters and returns', 'rail and injectors'][number % 3]}`;
    await addAssignment(db, { id, organizationId, createdBy, setVersionId: versionId, title, opensAt, closesAt });
    await db.insert(assignedClasses).values({ assignmentId: id, classId });
    const done = ids
      .filter(() => draw.next() < 0.94)
      .map((learnerId) => {
        const late = draw.next() < 0.05 ? DAY : -DAY;
        const handedInAt = new Date(closesAt.getTime() + late);
        const total = Math.round(1000 * draw.between(0.3, 1)) / 10;
        return { id: `${id} ${learnerId}`, learnerId, handedInAt, total, waiting: draw.next() < 0.02 ? 1 : 0 };
      });
    await inPieces(done, (some) =>
      db.insert(turns).values(
        some.map(({ id: turnId, learnerId, handedInAt }) => ({
          ...{ id: turnId, assignmentId: id, learnerId, organizationId, number: 1 },
          ...{ startedAt: opensAt, endsAt: closesAt, handedInAt },
        })),
      ),
    );
    await inPieces(done, (some) =>
      db
        .insert(turnResults)
        .values(some.map(({ id: turnId, total, waiting }) => ({ turnId, total, waiting, tasks: [] }))),
    );
  }
}

function nameOf(id: string): string {
  const given = ['Ada', 'Bo', 'Cleo', 'Dov', 'Esi', 'Fen', 'Gus', 'Hana', 'Ivo', 'Juno'];
  const number = Number(id.slice(-4));
  return `${given[number % 10]} Invented-${number}`;
}

/** A statement takes no more than so many values at once. */
async function inPieces<T>(rows: readonly T[], insert: (some: T[]) => PromiseLike<unknown>): Promise<void> {
  for (let from = 0; from < rows.length; from += 500) await insert(rows.slice(from, from + 500));
}
