import { findGiven, type Given } from '@/db/queries/given';
import type { TurnResultRow } from '@/db/queries/turn-results';
import { listChanges, listTurnCases, listTurnTasks } from '@/db/queries/turn-work';
import { findTurn, type Turn } from '@/db/queries/turns';
import type { Change } from '@/lib/regrading/change';
import { isCase, tasksOf } from '@/lib/sets/tasks';
import { database } from '../database';
import type { Desk } from '../permit';
import { readSitting } from '../sittings/read-sitting';
import { handInTurn } from './hand-in-turn';
import { goesOn } from './turn-clock';
import { turnOutcome } from './turn-outcome';
import { isUntold, tellsAt } from './untold';

/** A task of a turn as its learner sees it. */
export interface TaskView {
  place: number;
  kind: 'case' | 'question';
  /** `closed`: nothing was done, and nothing is taken any more; `missing`: there is no such question any more. */
  state: 'not-opened' | 'opened' | 'called' | 'unanswered' | 'answered' | 'closed' | 'missing';
  /** Where it is, once it is somewhere. */
  href: string | undefined;
  /** 0…1 of what it is worth, null while a person has to mark it; undefined while nothing is told. */
  share: number | null | undefined;
}

export interface TurnView extends Given {
  turn: Turn;
  open: boolean;
  tasks: readonly TaskView[];
  tellsAt: Date;
  untold: boolean;
  /** Undefined while it is open, or nothing may be told. */
  outcome: TurnResultRow | undefined;
  /** What was changed about marks for everybody at the assignment; none while nothing is told. */
  changes: readonly { id: string; change: Change; reason: string }[];
}

/** A learner's own turn as it stands now, handed in where its time is over; undefined when it is missing or someone else's. */
export async function readTurn(desk: Desk, turnId: string, now: Date): Promise<TurnView | undefined> {
  const found = await findTurn(database(), desk.learnerId, turnId);
  if (!found) return undefined;
  if (!found.handedInAt && !goesOn(found, now)) await handInTurn(desk, turnId, now);
  const turn = (await findTurn(database(), desk.learnerId, turnId)) ?? found;
  const given = await findGiven(database(), desk, turn.assignmentId);
  if (!given) return undefined;
  const untold = isUntold(given, now);
  const outcome = untold ? undefined : await turnOutcome(turn);
  const tasks = await tasksAt(desk, turn, given, { open: turn.handedInAt === null, untold });
  return {
    ...given,
    turn,
    open: turn.handedInAt === null,
    tasks: tasks.map((task) => ({ ...task, share: outcome?.tasks.find(({ place }) => place === task.place)?.share })),
    tellsAt: tellsAt(given),
    untold,
    outcome,
    changes: outcome ? await listChanges(database(), turn.assignmentId) : [],
  };
}

async function tasksAt(
  desk: Desk,
  { id, sittingId }: Turn,
  { body }: Given,
  { open, untold }: { open: boolean; untold: boolean },
): Promise<Omit<TaskView, 'share'>[]> {
  const db = database();
  const [places, cases] = [await listTurnTasks(db, id), await listTurnCases(db, id)];
  const sitting = sittingId ? await readSitting(desk, sittingId) : undefined;
  return tasksOf(body).map((task) => {
    const { place } = task;
    if (isCase(task)) {
      const at = cases.find((one) => one.place === place);
      const state = at?.call ? 'called' : at ? (open ? 'opened' : 'closed') : open ? 'not-opened' : 'closed';
      const debrief = at?.call && !untold ? '/debrief' : '';
      return { place, kind: 'case', state, href: at && `/learn/cases/${at.attemptId}${debrief}` };
    }
    const at = places.find((one) => one.place === place)?.sittingPlace;
    const asked = sitting?.places.find((one) => one.place === at);
    if (!asked) return { place, kind: 'question', state: 'missing', href: undefined };
    const state = asked.answer ? 'answered' : open ? 'unanswered' : 'closed';
    const shown = open || !untold;
    return { place, kind: 'question', state, href: shown ? `/learn/sittings/${sittingId}?at=${at}` : undefined };
  });
}
