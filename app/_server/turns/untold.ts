import type { Db } from '@/db/client';
import { findGiven, type Given, type Learner } from '@/db/queries/given';
import { findTurnOf, listTurns, listTurnsCases, listTurnsEverywhere, type Turn } from '@/db/queries/turns';
import { toldAt } from '@/lib/assignments/phase';
import { GRACE } from '../sittings/read-sitting';

/** A turn with what it is at. */
export interface TurnAt extends Given {
  turn: Turn;
}

/** The turn that a case, or a sitting, is part of; undefined for one that is practised freely. */
export async function turnOf(db: Db, work: { attemptId: string } | { sittingId: string }): Promise<TurnAt | undefined> {
  const turn = await findTurnOf(db, work);
  if (!turn) return undefined;
  const given = await findGiven(db, turn, turn.assignmentId);
  return given && { turn, ...given };
}

/**
 * From when what came of work at an assignment is told. Until then nothing may say it: no page, list or download. What was
 * on its way when the last turn ended is taken before.
 */
export function tellsAt({ assignment, mostExtraTime }: Pick<Given, 'assignment' | 'mostExtraTime'>): Date {
  const { mode } = assignment.rules;
  return new Date(toldAt(assignment, mostExtraTime) + (mode === 'assessed' ? GRACE : 0));
}

export function isUntold(given: Pick<Given, 'assignment' | 'mostExtraTime'>, now: Date): boolean {
  return now < tellsAt(given);
}

/** Work of a learner whose outcome is not told yet. */
export interface Untold {
  /** By the attempt's id. */
  attempts: ReadonlyMap<string, TurnAt>;
  /** By the sitting's id. */
  sittings: ReadonlyMap<string, TurnAt>;
}

/** All of a learner's work in an organisation that is not told yet. */
export async function listUntold(db: Db, learner: Learner, now: Date): Promise<Untold> {
  return untoldOf(db, await listTurns(db, learner), now);
}

/** The same in every organisation that they are or were in. */
export async function listUntoldEverywhere(db: Db, learnerId: string, now: Date): Promise<Untold> {
  return untoldOf(db, await listTurnsEverywhere(db, learnerId), now);
}

async function untoldOf(db: Db, turns: readonly Turn[], now: Date): Promise<Untold> {
  const untold = new Map<string, TurnAt>();
  for (const turn of turns) {
    const given = await findGiven(db, turn, turn.assignmentId);
    if (given && isUntold(given, now)) untold.set(turn.id, { turn, ...given });
  }
  const cases = await listTurnsCases(db, [...untold.keys()]);
  return {
    attempts: new Map(cases.flatMap(({ turnId, attemptId }) => pair(attemptId, untold.get(turnId)))),
    sittings: new Map([...untold.values()].flatMap((one) => pair(one.turn.sittingId, one))),
  };
}

function pair(id: string | null, turn: TurnAt | undefined): [string, TurnAt][] {
  return id && turn ? [[id, turn]] : [];
}
