/** One number for each point of the grid. */
export type OnGrid = Float64Array;

/** Of the first point, logits. */
export const GRID_LOWEST = -6;

/** Logits from one point to the next. */
export const GRID_STEP = 0.05;

/**
 * The abilities at which everything is reckoned: −6…6 logits, 0 where the mean of the reference population stands, 1 its
 * spread. Sums over equal steps are far more exact for bell-shaped curves than their step suggests.
 */
export const GRID: OnGrid = Float64Array.from({ length: 241 }, (_, at) => (at - 120) / 20);
