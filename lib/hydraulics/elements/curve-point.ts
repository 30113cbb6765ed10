import { type Friction, frictionAt, LAMINAR_REYNOLDS, viscousTerm } from './friction';

/** What shapes a pipe's curve of loss (f·slenderness + minorLoss)·Re². */
export interface CurveShape {
  /** Length over bore. */
  slenderness: number;
  minorLoss: number;
  relativeRoughness: number;
}

/** A point of a pipe's curve of loss against Reynolds number. */
export interface CurvePoint {
  reynolds: number;
  loss: number;
  /** d reynolds / d loss. */
  slope: number;
  /** d ln loss / d ln reynolds: 1 in laminar flow, up to 4 in transition, 2 in fully rough flow. */
  exponent: number;
}

export const POINTS_PER_OCTAVE = 32;
/** Up to Re 1e8, far beyond any fuel line. */
export const LAST_POINT = 17 * POINTS_PER_OCTAVE;

const gridReynolds = Float64Array.from(
  { length: LAST_POINT + 1 },
  (_, index) => LAMINAR_REYNOLDS * 2 ** (index / POINTS_PER_OCTAVE),
);
const gridViscous = gridReynolds.map(viscousTerm);
const friction: Friction = { factor: Number.NaN, exponent: Number.NaN };

/** The curve at one of its fixed Reynolds numbers. */
export function curvePoint({ slenderness, minorLoss, relativeRoughness }: CurveShape, index: number): CurvePoint {
  const reynolds = gridReynolds[index] as number;
  frictionAt(reynolds, gridViscous[index] as number, relativeRoughness, friction);
  const pipeLoss = friction.factor * slenderness;
  const total = pipeLoss + minorLoss;
  const loss = total * reynolds * reynolds;
  const exponent = 2 + (friction.exponent * pipeLoss) / total;
  return { reynolds, loss, slope: reynolds / (exponent * loss), exponent };
}
