import { daysUntilDue, type Memory, type Remembered, recall, remember } from './memory';

/** Something that is asked again and again: a kind of question on a topic, or a question that somebody wrote. */
export interface Review {
  card: string;
  /** 0…1. */
  credit: number;
  /** Counts days on the learner's calendar. */
  day: number;
}

/** What is known of a card after its last review. */
export interface Card extends Memory {
  card: string;
  /** Day of the last review. */
  reviewed: number;
  /** Day on which it is to be asked again. */
  due: number;
}

/** Marks below the first count as forgotten, below the second as hard. Assumed: the model was made for people who rate themselves. */
const HARD_FROM = 0.5;
const GOOD_FROM = 0.8;

/** What a mark says of remembering. Never `easy`: a mark does not tell how much thought an answer cost. */
export function rememberedBy(credit: number): Remembered {
  if (credit < HARD_FROM) return 'again';
  return credit < GOOD_FROM ? 'hard' : 'good';
}

/** Every card that was reviewed, as its last review left it. @param reviews  In order of time. */
export function scheduleOf(reviews: readonly Review[]): Card[] {
  const cards = new Map<string, Card>();
  for (const review of reviews) cards.set(review.card, afterReview(cards.get(review.card), review));
  return [...cards.values()];
}

function afterReview(before: Card | undefined, { card, credit, day }: Review): Card {
  // A clock that was put back must not make somebody forget.
  const gap = before ? Math.max(0, day - before.reviewed) : 0;
  const memory = remember(before, gap, rememberedBy(credit));
  return { card, ...memory, reviewed: day, due: day + daysUntilDue(memory, gap) };
}

/** Those due on a day, the longest overdue first. */
export function dueOn(cards: readonly Card[], day: number): Card[] {
  const due = cards.filter((card) => card.due <= day);
  return due.sort((a, b) => a.due - b.due || byRecall(a, b, day) || byName(a, b));
}

/** All of them, the least remembered first. */
export function weakestFirst(cards: readonly Card[], day: number): Card[] {
  return [...cards].sort((a, b) => byRecall(a, b, day) || b.difficulty - a.difficulty || byName(a, b));
}

function byRecall(a: Card, b: Card, day: number): number {
  return recallOn(a, day) - recallOn(b, day);
}

function byName(a: Card, b: Card): number {
  return a.card < b.card ? -1 : 1;
}

function recallOn(card: Card, day: number): number {
  return recall(card, Math.max(0, day - card.reviewed));
}
