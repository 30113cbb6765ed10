import { getTranslations } from 'next-intl/server';
import { type AssignedPerson, listAssigned } from '@/db/queries/assigned-people';
import type { GivenSet } from '@/db/queries/assignments';
import { type LiveCase, listLiveAnswers, listLiveCases, listLiveReadings } from '@/db/queries/live-turns';
import { countUnreadNudges } from '@/db/queries/nudges';
import { listTurnLines, type TurnLine } from '@/db/queries/turn-ends';
import { expectedMinutes, type TaskTrace, whereaboutsOf } from '@/lib/assignments/whereabouts';
import { parseCaseCode } from '@/lib/cases/case-code';
import { safetyEvents } from '@/lib/grading/safety-events';
import { isCase, tasksOf } from '@/lib/sets/tasks';
import { catalogue } from '../catalogue';
import { database } from '../database';
import { MOST_PEOPLE } from './change-assignment';
import { liveKey } from './live-keys';

/** One person on the live page, in sentences. */
export interface LiveLine {
  key: string;
  name: string;
  state: 'not-begun' | 'working' | 'over' | 'handed-in';
  where: string;
  minutes: string;
  /** Something that could have hurt somebody, how often. */
  safety: { count: number; words: string };
  /** Why somebody might want to go there. */
  notes: string[];
}

export interface LiveView {
  counts: string;
  updated: string;
  /** Said when no further numbers come. */
  lost: string;
  lines: LiveLine[];
}

/** Who is where at an assignment, at this moment. */
export async function liveView(found: GivenSet, now: Date): Promise<LiveView> {
  const { id, organizationId, rules } = found;
  const db = database();
  const [people, turns, cases, answers, unread] = await Promise.all([
    listAssigned(db, { assignmentId: id, organizationId }, MOST_PEOPLE),
    listTurnLines(db, id),
    listLiveCases(db, id),
    listLiveAnswers(db, id),
    countUnreadNudges(db, id),
  ]);
  const latest = new Map(turns.map((turn) => [turn.learnerId, turn]));
  const shown = new Set([...latest.values()].map((turn) => turn.id));
  const events = await countEvents(cases.filter(({ turnId }) => shown.has(turnId)));
  const t = await getTranslations('assignments.live');
  const lines = await Promise.all(
    named(found, people, (number) => t('learner', { number })).map(({ person, key, name }) => {
      const turn = latest.get(person.id);
      const traces = turn ? tracesOf(found, turn, cases, answers) : [];
      const known = { turn, traces, events: events.get(turn?.id ?? '') ?? 0, unread: unread.get(person.id) ?? 0 };
      return lineOf({ key, name }, known, { limit: rules.minutes, now });
    }),
  );
  const time = timeIn(rules.timeZone, now);
  return {
    counts: t('counts', {
      begun: lines.filter(({ state }) => state === 'working').length,
      done: lines.filter(({ state }) => state === 'handed-in' || state === 'over').length,
      rest: lines.filter(({ state }) => state === 'not-begun').length,
    }),
    updated: t('updated', { time }),
    lost: t('lost', { time }),
    lines,
  };
}

/** Whom a line is about; of an anonymous assignment a number, in an order that says nothing. */
function named({ id, rules }: GivenSet, people: readonly AssignedPerson[], learner: (number: number) => string) {
  const keyed = people.map((person) => ({ person, key: liveKey(id, person.id), name: person.name }));
  if (!rules.anonymous) return keyed;
  return keyed.sort((a, b) => (a.key < b.key ? -1 : 1)).map((one, index) => ({ ...one, name: learner(index + 1) }));
}

function tracesOf(
  { body }: GivenSet,
  turn: TurnLine,
  cases: readonly LiveCase[],
  answers: Awaited<ReturnType<typeof listLiveAnswers>>,
): TaskTrace[] {
  return tasksOf(body).map((task): TaskTrace => {
    const at = (row: { turnId: string; place: number }) => row.turnId === turn.id && row.place === task.place;
    if (!isCase(task)) {
      const answeredAt = answers.find(at)?.answeredAt?.getTime() ?? null;
      return { place: task.place, kind: 'question', openedAt: null, lastAt: answeredAt, done: answeredAt !== null };
    }
    const row = cases.find(at);
    return {
      place: task.place,
      kind: 'case',
      openedAt: row?.openedAt.getTime() ?? null,
      lastAt: (row?.calledAt ?? row?.lastActAt)?.getTime() ?? null,
      done: row?.calledAt != null,
    };
  });
}

/** Safety events of each turn so far, whether its cases are called or not. */
async function countEvents(cases: readonly LiveCase[]): Promise<Map<string, number>> {
  const readings = await listLiveReadings(
    database(),
    cases.map(({ attemptId }) => attemptId),
  );
  const counts = new Map<string, number>();
  for (const { turnId, attemptId, caseCode } of cases) {
    const parsed = parseCaseCode(caseCode, catalogue());
    const rig = 'spec' in parsed ? catalogue().rigs.get(parsed.spec.rig) : undefined;
    if (!rig) continue;
    const taken = readings.filter((one) => one.attemptId === attemptId).map(({ seq, body }) => ({ ...body, seq }));
    counts.set(turnId, (counts.get(turnId) ?? 0) + safetyEvents(taken, { rig }, catalogue()).length);
  }
  return counts;
}

interface Known {
  turn: TurnLine | undefined;
  traces: readonly TaskTrace[];
  events: number;
  unread: number;
}

async function lineOf(
  who: Pick<LiveLine, 'key' | 'name'>,
  { turn, traces, events, unread }: Known,
  { limit, now }: { limit: number | null; now: Date },
): Promise<LiveLine> {
  const t = await getTranslations('assignments.live');
  const safety = { count: events, words: t('safety', { count: events }) };
  const notes = unread > 0 ? [t('unread', { count: unread })] : [];
  if (!turn) return { ...who, state: 'not-begun', where: t('notBegun'), minutes: '', safety, notes };
  const { startedAt, endsAt, handedInAt } = turn;
  const ended = handedInAt ?? (endsAt <= now ? endsAt : undefined);
  const minutes = minutesBetween(startedAt, ended ?? now);
  if (ended) {
    const state = handedInAt ? 'handed-in' : 'over';
    const where = t(handedInAt ? 'handedIn' : 'over');
    return { ...who, state, where, minutes: t('minutes', { minutes }), safety, notes };
  }
  const expected = expectedMinutes(traces, limit);
  const at = { startedAt: startedAt.getTime(), now: now.getTime(), expected };
  const { done, current, quiet } = whereaboutsOf(traces, at);
  const { place = 0, kind = 'case', stuck = false } = current ?? {};
  const tasks = traces.length;
  const where = current
    ? `${t('working', { place, tasks, kind: t(kind) })}, ${t('done', { done })}`
    : t('allDone', { tasks });
  if (current && stuck) notes.unshift(t('stuck', { minutes: current.minutes }));
  if (quiet >= QUIET_MINUTES) notes.unshift(t('quiet', { minutes: quiet }));
  const left = t('minutes', { minutes: minutesBetween(now, endsAt) });
  const time = limit === null ? t('minutes', { minutes }) : t('of', { minutes, left });
  return { ...who, state: 'working', where, minutes: time, safety, notes };
}

/** From when it is said that nothing was done. Assumed. */
const QUIET_MINUTES = 8;

function minutesBetween(from: Date, to: Date): number {
  return Math.max(0, Math.floor((to.getTime() - from.getTime()) / 60_000));
}

/** To the second, since the page is of this very moment. */
function timeIn(timeZone: string, at: Date): string {
  const format = { timeZone, hour: '2-digit', minute: '2-digit', second: '2-digit', hourCycle: 'h23' } as const;
  return new Intl.DateTimeFormat('en-GB', format).format(at);
}
