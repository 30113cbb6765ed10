import { findGiven, type Given, listGiven } from '@/db/queries/given';
import type { TurnResultRow } from '@/db/queries/turn-results';
import { listTurns, type Turn } from '@/db/queries/turns';
import { type Phase, phaseOf } from '@/lib/assignments/phase';
import { database } from '../database';
import type { Desk } from '../permit';
import { handInOverdueTurns } from './hand-in-turn';
import { turnOutcome } from './turn-outcome';
import { isUntold, tellsAt } from './untold';

/** An assignment as somebody has it, with their turns at it. */
export interface GivenView extends Given {
  /** For them, with their extra time. */
  phase: Phase;
  turns: readonly TurnLine[];
  tellsAt: Date;
  untold: boolean;
}

export interface TurnLine extends Turn {
  /** Undefined while it is open, or nothing may be told. */
  outcome: TurnResultRow | undefined;
}

/** As many as one has at a time, and looks back over. */
const LISTED = 60;

/** All that is given to somebody; turns that ran out of time are handed in. */
export async function readAllGiven(desk: Desk, now: Date): Promise<GivenView[]> {
  await handInOverdueTurns(desk, now);
  const given = await listGiven(database(), desk, LISTED);
  const turns = await listTurns(database(), desk);
  const views = given.map((one) =>
    viewOf(
      one,
      turns.filter(({ assignmentId }) => assignmentId === one.assignment.id),
      now,
    ),
  );
  return Promise.all(views);
}

/** One of them; undefined where the organisation has no such assignment. */
export async function readGiven(desk: Desk, assignmentId: string, now: Date): Promise<GivenView | undefined> {
  await handInOverdueTurns({ ...desk, assignmentId }, now);
  const given = await findGiven(database(), desk, assignmentId);
  return given && viewOf(given, await listTurns(database(), desk, assignmentId), now);
}

async function viewOf(given: Given, turns: readonly Turn[], now: Date): Promise<GivenView> {
  const untold = isUntold(given, now);
  const outcomes = await Promise.all(turns.map(async (turn) => (untold ? undefined : turnOutcome(turn))));
  return {
    ...given,
    phase: phaseOf(given.assignment, now, given),
    turns: turns.map((turn, index) => ({ ...turn, outcome: outcomes[index] })),
    tellsAt: tellsAt(given),
    untold,
  };
}
