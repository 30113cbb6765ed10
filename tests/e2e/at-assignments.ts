import { randomBytes } from 'node:crypto';
import { eq } from 'drizzle-orm';
import type { Db } from '@/db/client';
import { assignedPeople, assignments } from '@/db/schema';
import { localTimeOf } from '@/lib/assignments/local-time';
import type { AssignmentRules } from '@/lib/assignments/rules';
import type { SetBody } from '@/lib/sets/set-body';
import { type ActionAnswer, callAction } from '../support/call-action';
import { newSession } from '../support/people';
import { placeFor, SHARED_PORT } from '../support/server';
import { addAssignment, addSet, someRules } from '../support/teaching-rows';
import { shared } from './at-questions';
import type { Somebody } from './somebody-new';

const MINUTE = 60_000;

export interface AssignmentWish {
  to: readonly { who: Somebody; extraTime?: number }[];
  body: SetBody;
  rules?: Partial<AssignmentRules>;
  /** Minutes from now. */
  opens?: number;
  closes?: number;
  /** The shared one unless said otherwise. */
  db?: Db;
}

/** An assignment in the shared database, given to people by name: open from an hour ago for a day, unless said otherwise. @returns its id. */
export async function assign({
  to,
  body,
  rules,
  opens = -60,
  closes = 24 * 60,
  db = shared(),
}: AssignmentWish): Promise<string> {
  const id = randomBytes(10).toString('hex');
  const organizationId = to[0]?.who.organizationId ?? '';
  const { versionId } = await addSet(db, { id: `set-${id}`, organizationId, createdBy: 'somebody', body });
  await addAssignment(db, {
    id,
    organizationId,
    setVersionId: versionId,
    createdBy: 'somebody',
    title: body.title,
  });
  await db
    .insert(assignedPeople)
    .values(to.map(({ who, extraTime = 0 }) => ({ assignmentId: id, userId: who.id, named: true, extraTime })));
  await moveWindow(id, { opens, closes, rules }, db);
  return id;
}

/** Moves when an assignment opens and closes, minutes from now. */
export async function moveWindow(
  id: string,
  { opens, closes, rules }: { opens: number; closes: number; rules?: Partial<AssignmentRules> | undefined },
  db = shared(),
): Promise<void> {
  const [opensAt, closesAt] = [opens, closes].map((minutes) => new Date(Date.now() + minutes * MINUTE)) as [Date, Date];
  const [row] = await db.select({ rules: assignments.rules }).from(assignments).where(eq(assignments.id, id));
  const times = { opens: localTimeOf(opensAt.getTime(), 'UTC'), closes: localTimeOf(closesAt.getTime(), 'UTC') };
  await db
    .update(assignments)
    .set({ opensAt, closesAt, rules: someRules({ ...row?.rules, ...rules, ...times }) })
    .where(eq(assignments.id, id));
}

let pressed = 0;

/** The server that is asked, with its database. */
interface Where {
  port: number;
  db: Db;
}

const sharedSite = (): Where => ({ port: placeFor(SHARED_PORT).port, db: shared() });

/** Sends a form of a page as somebody. */
export async function press(
  who: Somebody,
  path: string,
  action: string,
  fields: Readonly<Record<string, string | readonly string[]>>,
  { port, db } = sharedSite(),
): Promise<ActionAnswer> {
  const cookie = await newSession(db, who.id, who.organizationId);
  const origin = `http://127.0.0.1:${port}`;
  return callAction({ origin, cookie }, path, action, { key: String(++pressed).padStart(32, '0'), ...fields });
}

/** Begins a turn as somebody. @returns its id. */
export async function beginTurn(who: Somebody, assignmentId: string, where = sharedSite()): Promise<string> {
  const { goesTo, text } = await press(who, `/learn/assignments/${assignmentId}`, 'beginTurn', { assignmentId }, where);
  const id = /\/learn\/turns\/(\w+)/.exec(goesTo ?? '')?.[1];
  if (!id) throw new Error(`No turn began: ${text.slice(0, 300)}`);
  return id;
}

/** Opens the case at a place of a turn. @returns the attempt's id. */
export async function openCase(who: Somebody, turnId: string, place = 1, where = sharedSite()): Promise<string> {
  const { goesTo, text } = await press(
    who,
    `/learn/turns/${turnId}`,
    'openTask',
    { turnId, place: String(place) },
    where,
  );
  const id = /\/learn\/cases\/(\w+)/.exec(goesTo ?? '')?.[1];
  if (!id) throw new Error(`No case opened: ${text.slice(0, 300)}`);
  return id;
}
