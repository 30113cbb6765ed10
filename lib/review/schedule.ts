import { type Card, createEmptyCard, fsrs, type Grade, Rating } from 'ts-fsrs';

/** Milliseconds since 1970. */
export type Instant = number;

/** One answer to something that may be asked again. */
export interface Reviewed {
  /** What was asked, whatever its seed: a kind on a topic, or a written question. */
  of: string;
  /** 0…1. */
  credit: number;
  at: Instant;
}

/** When something is to be asked again. */
export interface Due {
  of: string;
  due: Instant;
  /** Days until nine of ten would still know it. */
  stability: number;
}

/** Nothing by chance, and no steps within a day: a shop's day is not a study session. */
const scheduler = fsrs({ enable_fuzz: false, enable_short_term: false });

/**
 * What has been asked, soonest due first.
 *
 * @param reviewed  In the order in which it was answered.
 * @source FSRS-6 as ts-fsrs 5.4.2 has it; its published vectors are among the tests.
 */
export function scheduleOf(reviewed: readonly Reviewed[]): Due[] {
  const cards = new Map<string, Card>();
  for (const { of, credit, at } of reviewed) {
    const card = cards.get(of) ?? createEmptyCard(at);
    cards.set(of, scheduler.next(card, at, ratingOf(credit)).card);
  }
  return [...cards]
    .map(([of, { due, stability }]) => ({ of, due: due.getTime(), stability }))
    .sort((a, b) => a.due - b.due || (a.of < b.of ? -1 : 1));
}

/** Half right is forgotten, most of it is hard. Assumed; nobody is asked how easy it was. */
const FORGOTTEN_BELOW = 0.5;
const HARD_BELOW = 0.8;

function ratingOf(credit: number): Grade {
  if (credit < FORGOTTEN_BELOW) return Rating.Again;
  return credit < HARD_BELOW ? Rating.Hard : Rating.Good;
}
