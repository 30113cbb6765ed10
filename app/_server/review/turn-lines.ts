import { listTurnsHandedIn, type WorkFilter } from '@/db/queries/review-work';
import { listTurnTasks } from '@/db/queries/turn-work';
import { database } from '../database';
import { type Assigned, handleOf, isNamed, type Who } from './who';

/** A turn that was handed in, with the ways to its work. */
export interface TurnLine {
  id: string;
  assignment: Assigned;
  number: number;
  who: Who;
  /** Null where it would tell who it is. */
  handedInAt: Date | null;
  demo: boolean;
  seen: boolean;
  /** Of its cases, in the order of the set. */
  attemptIds: readonly string[];
  sittingId: string | null;
}

/**
 * Turns that were handed in, the last first; those without a name by what stands for it, after all the others: a place in the
 * order of time would tell who it is.
 */
export async function readTurnLines(filter: WorkFilter, limit: number, now: Date): Promise<TurnLine[]> {
  const works = await listTurnsHandedIn(database(), filter, limit);
  const lines = await Promise.all(
    works.map(async ({ turn, assignment, name, seen }): Promise<TurnLine> => {
      const { id, number, handedInAt, demo, sittingId, learnerId } = turn;
      const named = await isNamed(assignment, now);
      const tasks = await listTurnTasks(database(), id);
      const attemptIds = tasks.flatMap(({ attemptId }) => attemptId ?? []);
      const who = named ? { name } : { handle: handleOf(assignment.id, learnerId) };
      return { id, assignment, number, who, handedInAt: named ? handedInAt : null, demo, seen, attemptIds, sittingId };
    }),
  );
  return [...lines.filter(({ who }) => 'name' in who), ...lines.filter(({ who }) => 'handle' in who).sort(byHandle)];
}

function byHandle(one: TurnLine, other: TurnLine): number {
  return `${one.assignment.id} ${handleIn(one)}`.localeCompare(`${other.assignment.id} ${handleIn(other)}`);
}

function handleIn({ who, number }: TurnLine): string {
  return 'handle' in who ? `${who.handle} ${number}` : '';
}
