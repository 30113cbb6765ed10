import type { Evidence } from './evidence';
import { standingRevisions } from './revisions';
import { type HalfLife, type Response, type Tally, tallyOf } from './tally';
import { weightOf } from './weights';

/** Raised with every change of how evidence is put together, so that states made before are made again. */
export const STATE_RULES = 1;

/** A response that counts, with how much it does and why not in full. */
export interface Weighed extends Evidence {
  /** 0…1, before it ages. */
  weight: number;
  /** How often the same task was answered before on the topic. */
  earlier: number;
}

/** What evidence on a topic comes to. */
export interface TopicState {
  tally: Tally;
  /** Cases among the responses that count. */
  cases: number;
}

/**
 * Responses of one person that stand and count, each with its weight, the oldest first.
 *
 * @param logged  Every revision, of any topics, in any order.
 */
export function weighed(logged: readonly Evidence[]): Weighed[] {
  const met = new Map<string, number>();
  return standingRevisions(logged)
    .filter(({ counts }) => counts)
    .sort(inTime)
    .map((one) => {
      const key = `${one.topic} ${one.exposure}`;
      const earlier = met.get(key) ?? 0;
      met.set(key, earlier + 1);
      return { ...one, earlier, weight: weightOf({ hints: one.hints, earlier }) };
    });
}

/** What the log of one person says of each topic. A topic that nothing counts on has no state. */
export function statesOf(logged: readonly Evidence[], halfLifeDays: HalfLife): Map<string, TopicState> {
  const states = new Map<string, TopicState>();
  for (const [topic, rows] of byTopic(weighed(logged))) {
    const tally = tallyOf(rows.map(responseOf), halfLifeDays);
    if (tally.count === 0) continue;
    states.set(topic, { tally, cases: rows.filter(({ source, weight }) => source === 'case' && weight > 0).length });
  }
  return states;
}

/** Responses topic by topic, in their order. */
export function byTopic<T extends Pick<Evidence, 'topic'>>(responses: readonly T[]): Map<string, T[]> {
  const topics = new Map<string, T[]>();
  for (const one of responses) {
    const rows = topics.get(one.topic);
    if (rows) rows.push(one);
    else topics.set(one.topic, [one]);
  }
  return topics;
}

export function responseOf({ at, model, score, weight }: Weighed): Response {
  return { at, model, score, weight };
}

/** A case, or a dangerous hands-on check, with its safety-critical acts. */
export interface SafeCase {
  work: string;
  at: number;
  events: number;
}

/** More cases than any role looks back over. */
const MOST_CASES = 60;

/**
 * Somebody's newest cases, the newest first. A case met before counts as another only where something dangerous was done in it.
 *
 * @param logged  Every revision of cases and hands-on checks, in any order.
 */
export function recentCasesOf(logged: readonly Evidence[]): SafeCase[] {
  const works = new Map<string, SafeCase & { again: boolean }>();
  const standing = weighed(logged).filter(({ source, safetyEvents }) => source === 'case' || safetyEvents > 0);
  for (const { work, at, safetyEvents, earlier, source } of standing) {
    if (source === 'question') continue;
    const before = works.get(work);
    works.set(work, {
      work,
      at,
      events: Math.max(before?.events ?? 0, safetyEvents),
      again: (before?.again ?? true) && earlier > 0,
    });
  }
  return [...works.values()]
    .filter(({ events, again }) => events > 0 || !again)
    .map(({ again: _, ...one }) => one)
    .sort((a, b) => b.at - a.at || (a.work < b.work ? 1 : -1))
    .slice(0, MOST_CASES);
}

function inTime(a: Evidence, b: Evidence): number {
  return a.at - b.at || (a.work < b.work ? -1 : a.work > b.work ? 1 : 0) || (a.topic < b.topic ? -1 : 1);
}
