import { FSRSAlgorithm, type Grade, generatorParameters, Rating } from 'ts-fsrs';

/** How well something is remembered. */
export interface Memory {
  /** Days until it is remembered nine times in ten. */
  stability: number;
  /** 1…10. */
  difficulty: number;
}

/** How well somebody remembered. */
export type Remembered = 'again' | 'hard' | 'good' | 'easy';

/** Days are the smallest step, and nothing is drawn: the same marks give the same days on any machine. */
const model = new FSRSAlgorithm(generatorParameters({ enable_fuzz: false, enable_short_term: false }));

const ratings: Readonly<Record<Remembered, Grade>> = {
  again: Rating.Again,
  hard: Rating.Hard,
  good: Rating.Good,
  easy: Rating.Easy,
};

/**
 * What is remembered after it was asked.
 *
 * @param before  Undefined where it was never asked.
 * @param gap  Days since it was last asked.
 * @source FSRS-6 with its published weights, as the library ts-fsrs computes it.
 */
export function remember(before: Memory | undefined, gap: number, remembered: Remembered): Memory {
  const { stability, difficulty } = model.next_state(before ?? null, gap, ratings[remembered]);
  return { stability, difficulty };
}

/** Days until it should be asked again: at least one. */
export function daysUntilDue({ stability }: Memory, gap: number): number {
  return model.next_interval(stability, gap);
}

/** Chance that it is remembered after so many days, 0…1. */
export function recall({ stability }: Memory, gap: number): number {
  return model.forgetting_curve(gap, stability);
}
