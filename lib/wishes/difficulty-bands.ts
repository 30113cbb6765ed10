type Band = readonly [from: number, to: number];

/** Bands of difficulty that a learner can wish for, in logits. */
export interface DifficultyBands {
  easier: Band;
  middle: Band;
  harder: Band;
}

/** About a third each of what is drawn with one thing wrong. */
const USUAL = { easierTo: -1.25, harderFrom: -0.75 };
/** About a third each of what is drawn at the hardest level. */
const HARDEST = { easierTo: 0.4, harderFrom: 1.5 };

/** Bands of each level: two things wrong at once are hard in themselves, and would leave no easier case to wish for. */
export function difficultyBands(hardest: boolean): DifficultyBands {
  const { easierTo, harderFrom } = hardest ? HARDEST : USUAL;
  return {
    easier: [Number.NEGATIVE_INFINITY, easierTo],
    middle: [easierTo, harderFrom],
    harder: [harderFrom, Number.POSITIVE_INFINITY],
  };
}
