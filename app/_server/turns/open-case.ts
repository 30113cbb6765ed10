import { addingAttempt, findStarted, type NewAttempt } from '@/db/queries/attempts';
import { findGiven } from '@/db/queries/given';
import { addingTurnTask, findTurn, holdingPlace, type Turn } from '@/db/queries/turns';
import { claimThen } from '@/db/together';
import { mayBeCoached } from '@/lib/coaching/may-be-coached';
import { tasksOf } from '@/lib/sets/tasks';
import type { FoundCase } from '@/lib/wishes/find-case';
import { database } from '../database';
import type { Desk } from '../permit';
import { randomId } from '../random-id';
import { caseAt } from './draw-task';
import { goesOn, openAt } from './turn-clock';

export type NotOpened = 'not-there' | 'turn-over' | 'case-not-drawn';

/** Opens the case at a place of a turn: starts its attempt the first time, finds it again afterwards. @returns the attempt's id. */
export async function openCase(
  desk: Desk,
  turnId: string,
  place: number,
  now: Date,
): Promise<{ attemptId: string } | { error: NotOpened }> {
  const db = database();
  const turn = await findTurn(db, desk.learnerId, turnId);
  if (!turn) return { error: 'not-there' };
  const key = keyOf(turn, place);
  const started = await findStarted(db, desk.learnerId, key);
  if (started) return { attemptId: started.id };
  if (!goesOn(turn, now)) return { error: 'turn-over' };
  const given = await findGiven(db, desk, turn.assignmentId);
  const item = given && tasksOf(given.body).find((task) => task.place === place)?.item;
  if (!given || !item || (item.kind !== 'case' && item.kind !== 'cases')) return { error: 'not-there' };
  const { assignmentId, number } = turn;
  const { mode, seeds } = given.assignment.rules;
  const parallelFor = seeds === 'parallel' ? desk.learnerId : undefined;
  const found = caseAt(item, { assignmentId, number, place, parallelFor });
  if (!found) return { error: 'case-not-drawn' };
  const attempt = attemptAt(turn, { key, found, now, coached: mode === 'practice' && mayBeCoached('practice') });
  const holding = holdingPlace(db, { turnId, place, openAt: openAt(now) });
  const task = { turnId, place, attemptId: attempt.id, sittingPlace: null };
  // All or nothing: an attempt that is in no turn would be one of practice.
  await claimThen(db, holding, [addingAttempt(db, attempt), addingTurnTask(db, task)]);
  // Another tab may have been first.
  const stored = await findStarted(db, desk.learnerId, key);
  return stored ? { attemptId: stored.id } : { error: 'turn-over' };
}

/** No key that a browser makes looks like this. */
function keyOf({ id }: Turn, place: number): string {
  return `turn ${id} ${place}`;
}

function attemptAt(
  { learnerId, organizationId, demo }: Turn,
  { key, found, now, coached }: { key: string; found: FoundCase; now: Date; coached: boolean },
): NewAttempt {
  const { case: theCase, certificate } = found;
  return {
    id: randomId(),
    learnerId,
    organizationId,
    key,
    caseCode: theCase.code,
    generatorVersion: theCase.generatorVersion,
    contentHash: theCase.contentHash,
    demo,
    difficulty: certificate.difficulty,
    features: certificate.features,
    coached,
    createdAt: now,
  };
}
