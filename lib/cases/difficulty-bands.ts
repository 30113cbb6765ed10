/** Logits: where cases stop being among the easier ones, and where the harder ones begin. */
const EASIER_TO = -0.5;
const HARDER_FROM = 0.5;

/** Bands of difficulty that a learner can wish for, each from and to, in logits. */
export const difficultyBands = {
  easier: [Number.NEGATIVE_INFINITY, EASIER_TO],
  middle: [EASIER_TO, HARDER_FROM],
  harder: [HARDER_FROM, Number.POSITIVE_INFINITY],
} as const satisfies Record<string, readonly [number, number]>;

export type DifficultyBand = keyof typeof difficultyBands;
