import type { Db } from '@/db/client';
import { findGiven, type Given, type Learner } from '@/db/queries/given';
import { countUnmarked } from '@/db/queries/review-work';
import { listTurns, listTurnsCases } from '@/db/queries/turns';
import { takenUntil } from '@/lib/assignments/phase';
import { showsNames } from '@/lib/reviewing/naming';

/** Work by its ids. */
export interface Works {
  attempts: ReadonlySet<string>;
  sittings: ReadonlySet<string>;
}

/** Work of somebody's that is marked without names, and must not stand beside theirs yet. */
export async function listUnnamed(db: Db, learner: Learner, now: Date): Promise<Works> {
  const turns: { id: string; sittingId: string | null }[] = [];
  for (const turn of await listTurns(db, learner)) {
    const given = await findGiven(db, turn, turn.assignmentId);
    if (given && !(await isNamed(db, given, now))) turns.push(turn);
  }
  const cases = await listTurnsCases(
    db,
    turns.map(({ id }) => id),
  );
  return {
    attempts: new Set(cases.flatMap(({ attemptId }) => attemptId ?? [])),
    sittings: new Set(turns.flatMap(({ sittingId }) => sittingId ?? [])),
  };
}

async function isNamed(db: Db, { assignment, mostExtraTime }: Given, now: Date): Promise<boolean> {
  const { anonymous, secondMarker } = assignment.rules;
  if (!anonymous) return true;
  const unmarked = await countUnmarked(db, assignment.id, secondMarker);
  return showsNames(anonymous, { endsAt: takenUntil(assignment, mostExtraTime), unmarked }, now.getTime());
}
