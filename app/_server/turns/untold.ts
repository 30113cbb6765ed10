import type { Db } from '@/db/client';
import { findGiven, type Given, type Learner } from '@/db/queries/given';
import { findIntakeOf, type Intake, listIntakesCases, listOpenIntakes } from '@/db/queries/intakes';
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

/** Whether nothing may be told yet of work in a turn or a new-hire check, if it is in one. */
export function isUntoldWithin({ turn, intake }: Within, now: Date): boolean {
  return (turn !== undefined && isUntold(turn, now)) || (intake !== undefined && intake.finishedAt === null);
}

/** What a case, or a sitting, is part of, if anything. */
export interface Within {
  turn: TurnAt | undefined;
  /** Nothing of it is told before it is finished. */
  intake: Intake | undefined;
}

export async function withinWhat(db: Db, work: { attemptId: string } | { sittingId: string }): Promise<Within> {
  return { turn: await turnOf(db, work), intake: await findIntakeOf(db, work) };
}

/** Work of a learner whose outcome is not told yet. */
export interface Untold {
  /** By the attempt's id. */
  attempts: ReadonlyMap<string, Within>;
  /** By the sitting's id. */
  sittings: ReadonlyMap<string, Within>;
}

/** All of a learner's work in an organisation that is not told yet. */
export async function listUntold(db: Db, learner: Learner, now: Date): Promise<Untold> {
  const intakes = await listOpenIntakes(db, learner.learnerId, learner.organizationId);
  return untoldOf(db, await listTurns(db, learner), intakes, now);
}

/** The same in every organisation that they are or were in. */
export async function listUntoldEverywhere(db: Db, learnerId: string, now: Date): Promise<Untold> {
  return untoldOf(db, await listTurnsEverywhere(db, learnerId), await listOpenIntakes(db, learnerId), now);
}

async function untoldOf(db: Db, turns: readonly Turn[], intakes: readonly Intake[], now: Date): Promise<Untold> {
  const untold = new Map<string, TurnAt>();
  const open = new Map(intakes.map((intake) => [intake.id, intake]));
  for (const turn of turns) {
    const given = await findGiven(db, turn, turn.assignmentId);
    if (given && isUntold(given, now)) untold.set(turn.id, { turn, ...given });
  }
  const cases = await listTurnsCases(db, [...untold.keys()]);
  const casesOfIntakes = await listIntakesCases(db, [...open.keys()]);
  return {
    attempts: new Map([
      ...cases.flatMap(({ turnId, attemptId }) => pair(attemptId, { turn: untold.get(turnId) })),
      ...casesOfIntakes.flatMap(({ intakeId, attemptId }) => pair(attemptId, { intake: open.get(intakeId) })),
    ]),
    sittings: new Map([
      ...[...untold.values()].flatMap((turn) => pair(turn.turn.sittingId, { turn })),
      ...intakes.flatMap((intake) => pair(intake.sittingId, { intake })),
    ]),
  };
}

function pair(id: string | null, { turn, intake }: Partial<Within>): [string, Within][] {
  return id && (turn || intake) ? [[id, { turn, intake }]] : [];
}
