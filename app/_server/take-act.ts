import { recordAct } from '@/db/queries/acts';
import type { OpenAct } from '@/db/schema/acts';
import { database } from './database';
import { type History, isSuperseded, readHistory } from './history';
import { intakeGoesOn } from './intakes/clock';
import type { Desk } from './permit';
import { goesOn, openAt } from './turns/turn-clock';

/** Why an attempt takes no act at all. */
export type ClosedReason =
  | 'not-there'
  | 'attempt-called'
  | 'attempt-superseded'
  | 'attempt-busy'
  | 'turn-over'
  | 'intake-over';

/** More acts than this at once come from no hand. */
const TRIES = 5;

export interface ActRequest<E extends string> {
  desk: Desk;
  attemptId: string;
  /** Made by the client: the same key again finds the act it made. */
  key: string;
  /** When it is done, if not now. */
  at?: Date;
  /** Pure: what the request comes to, given what has happened so far. */
  decide: (history: History) => { act: OpenAct } | { error: E };
}

/**
 * Reads, decides, writes. The act is stored only on the very past it was decided on; when another tab came first,
 * it is decided again.
 *
 * @returns the number of the act, which for a known key is the one made before.
 */
export async function takeAct<E extends string>(
  request: ActRequest<E>,
): Promise<{ seq: number } | { error: E | ClosedReason }> {
  for (let tries = 0; tries < TRIES; tries++) {
    const history = await readHistory(request.desk, request.attemptId);
    if (!history) return { error: 'not-there' };
    const known = history.keys.get(request.key);
    if (known !== undefined) return { seq: known };
    const closed = closedReason(history, request.at ?? new Date());
    if (closed) return { error: closed };
    const decided = request.decide(history);
    if ('error' in decided) return decided;
    const written = await write(request, history, decided.act);
    if (written) return { seq: written.seq };
  }
  return { error: 'attempt-busy' };
}

export function closedReason({ attempt, call, turn, intake }: History, at: Date): ClosedReason | undefined {
  if (call) return 'attempt-called';
  if (turn && !goesOn(turn.turn, at)) return 'turn-over';
  if (intake && !intakeGoesOn(intake, at)) return 'intake-over';
  return isSuperseded(attempt) ? 'attempt-superseded' : undefined;
}

function write<E extends string>(
  { desk, key, at = new Date() }: ActRequest<E>,
  { attempt, acts }: History,
  body: OpenAct,
) {
  const seq = (acts.at(-1)?.seq ?? 0) + 1;
  const act = { attemptId: attempt.id, seq, key, body, createdAt: at };
  return recordAct(database(), desk.learnerId, act, openAt(at));
}
