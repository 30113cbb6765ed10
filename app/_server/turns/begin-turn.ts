import { findGiven, type Given } from '@/db/queries/given';
import { askingQuestion } from '@/db/queries/sitting-questions';
import { addingSitting } from '@/db/queries/sittings';
import { addingTurnTask, beginningTurn, findTurn, givingSitting, listTurns, type Turn } from '@/db/queries/turns';
import { claimThen, type Statement } from '@/db/together';
import { endsAt, phaseOf } from '@/lib/assignments/phase';
import { type Task, tasksOf } from '@/lib/sets/tasks';
import { database } from '../database';
import type { Desk } from '../permit';
import { type AskedPlace, presentVersion } from '../questions/asked-question';
import { randomId } from '../random-id';
import { questionAt } from './draw-task';
import { handInOverdueTurns } from './hand-in-turn';
import { turnId } from './turn-seed';

/** Why no turn begins. */
export type NotBegun = 'not-there' | 'assignment-coming' | 'assignment-closed' | 'no-turns-left';

export interface BeginWish {
  desk: Desk;
  assignmentId: string;
  /** Made by the client: the same key again finds the turn that it began. */
  key: string;
  /** By the server's clock. */
  at: Date;
  demo?: boolean;
}

/** More presses than this at once come from no hand. */
const TRIES = 3;

/**
 * Begins a turn, its questions chosen at once, or goes on with one that is open. Whether the assignment is given to them is
 * for the door to ask.
 */
export async function beginTurn(wish: BeginWish): Promise<Turn | { error: NotBegun }> {
  const { desk, assignmentId, key, at } = wish;
  const db = database();
  const given = await findGiven(db, desk, assignmentId);
  if (!given) return { error: 'not-there' };
  await handInOverdueTurns({ ...desk, assignmentId }, at);
  const id = turnId(assignmentId, desk.learnerId, key);
  for (let tries = 0; tries < TRIES; tries++) {
    const begun = (await findTurn(db, desk.learnerId, id)) ?? (await openTurn(wish));
    if (begun) return begun;
    const number = (await listTurns(db, desk, assignmentId)).length + 1;
    const refused = refusal(given, number, at);
    if (refused) return { error: refused };
    await store(wish, given, { id, number });
  }
  throw new Error('The turn was neither begun nor found');
}

/** Why a turn of a number may not begin at a moment. */
export function refusal(
  { assignment, extraTime }: Given,
  number: number,
  at: Date,
): Exclude<NotBegun, 'not-there'> | undefined {
  const phase = phaseOf(assignment, at, { extraTime });
  if (phase === 'coming') return 'assignment-coming';
  if (phase === 'closed' || assignment.archivedAt) return 'assignment-closed';
  return number > assignment.rules.turns ? 'no-turns-left' : undefined;
}

async function openTurn({ desk, assignmentId }: BeginWish): Promise<Turn | undefined> {
  return (await listTurns(database(), desk, assignmentId)).find(({ handedInAt }) => handedInAt === null);
}

async function store(
  { desk, assignmentId, at, demo = false }: BeginWish,
  { assignment, body, extraTime }: Given,
  { id, number }: Pick<Turn, 'id' | 'number'>,
): Promise<void> {
  const { learnerId, organizationId } = desk;
  const ends = new Date(endsAt(assignment, at, extraTime));
  const parallelFor = assignment.rules.seeds === 'parallel' ? learnerId : undefined;
  const asked = await Promise.all(
    tasksOf(body).map(async (task) => questionOf(task, { assignmentId, number, place: task.place, parallelFor })),
  );
  const turn = { id, assignmentId, learnerId, organizationId, number, demo, startedAt: at, endsAt: ends };
  await claimThen(
    database(),
    beginningTurn(database(), turn),
    asking(
      turn,
      asked.filter((one) => one !== undefined),
    ),
  );
}

interface TurnQuestion {
  /** Of the turn. */
  place: number;
  asked: AskedPlace;
}

async function questionOf(
  { item, place }: Task,
  drawnFor: Parameters<typeof questionAt>[1],
): Promise<TurnQuestion | undefined> {
  if (item.kind === 'case' || item.kind === 'cases') return undefined;
  const asked = await questionAt(item, drawnFor);
  return asked && { place, asked };
}

/** The sitting of a turn, with its questions in the order of the turn. */
function asking(
  turn: Pick<Turn, 'id' | 'learnerId' | 'organizationId' | 'startedAt' | 'endsAt'> & { demo: boolean },
  questions: readonly TurnQuestion[],
): Statement[] {
  if (questions.length === 0) return [];
  const db = database();
  const { id: turnId, learnerId, organizationId, demo, startedAt, endsAt } = turn;
  const sittingId = randomId();
  const sitting = { id: sittingId, learnerId, organizationId, key: `turn ${turnId}`, topics: [], demo };
  return [
    addingSitting(db, { ...sitting, mode: 'check', createdAt: startedAt, closesAt: endsAt }),
    givingSitting(db, turnId, sittingId),
    ...questions.flatMap(({ place, asked }, index) => [
      askingQuestion(db, { sittingId, place: index + 1, ...asked, ...presentVersion(), askedAt: startedAt }),
      addingTurnTask(db, { turnId, place, attemptId: null, sittingPlace: index + 1 }),
    ]),
  ];
}
