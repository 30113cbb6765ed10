import { setImmediate } from 'node:timers/promises';
import { ODDS_AT, type Odds, oddsAt, rulesOf, type TopicRule } from '@/lib/readiness/odds';
import type { RoleProfile } from '@/lib/readiness/profile';

export interface ReadOdds {
  rule: TopicRule;
  topics: readonly string[];
  /** In the order of `ODDS_AT`. */
  odds: readonly Odds[];
}

/** Simulated once for each rule: the same rule always comes to the same. */
const known = new Map<string, Promise<Odds[]>>();
const MOST_KNOWN = 200;

/** What comes of people near the lines of a profile's topics. */
export function readOdds(profile: RoleProfile): Promise<ReadOdds[]> {
  return Promise.all(rulesOf(profile).map(async ({ rule, topics }) => ({ rule, topics, odds: await oddsOf(rule) })));
}

function oddsOf(rule: TopicRule): Promise<Odds[]> {
  const key = JSON.stringify(rule);
  const found = known.get(key) ?? simulated(rule);
  known.set(key, found);
  for (const oldest of known.keys()) if (known.size > MOST_KNOWN) known.delete(oldest);
  return found;
}

/** Others are answered in between. */
async function simulated(rule: TopicRule): Promise<Odds[]> {
  const odds: Odds[] = [];
  for (const fromLine of ODDS_AT) {
    await setImmediate();
    odds.push(oddsAt(rule, fromLine));
  }
  return odds;
}
