import { type Friction, frictionAt, LAMINAR_REYNOLDS, viscousTerm } from './friction';

/** A point of a pipe's curve of loss against Reynolds number. */
interface CurvePoint {
  reynolds: number;
  loss: number;
  /** d reynolds / d loss. */
  slope: number;
  /** d ln loss / d ln reynolds: 1 in laminar flow, up to 4 in transition, 2 in fully rough flow. */
  exponent: number;
}

const NOWHERE: CurvePoint = { reynolds: Number.NaN, loss: Number.NaN, slope: Number.NaN, exponent: Number.NaN };
const POINTS_PER_OCTAVE = 32;
/** Up to Re 1e8, far beyond any fuel line. */
const LAST = 17 * POINTS_PER_OCTAVE;
/** Where a pipe's first search begins: Re 3200, the middle of what fuel lines see. */
const FIRST_GUESS = 2 * POINTS_PER_OCTAVE;
const MOST_JUMPS = 5;
const POINTS_PER_E_FOLD = POINTS_PER_OCTAVE / Math.LN2;

const gridReynolds = Float64Array.from(
  { length: LAST + 1 },
  (_, index) => LAMINAR_REYNOLDS * 2 ** (index / POINTS_PER_OCTAVE),
);
const gridViscous = gridReynolds.map(viscousTerm);

/**
 * The Reynolds number at which (f(Re)·slenderness + minorLoss)·Re² equals a given loss, f being Churchill's.
 *
 * Up to Re 800 flow is laminar and there is a closed form. Beyond, the curve is evaluated at fixed Reynolds numbers, 32
 * to the octave, and a cubic with the curve's own slopes joins each two: nothing iterates. The loss so found is
 * Churchill's to 4e-8, in the bends of the transition (Re 1500–5000) to 4e-5; Churchill's is a pipe's to a few per cent.
 * A point is evaluated and kept when first needed; it depends on nothing but its place, so that no answer depends on what
 * was asked before. Range: to Re 1e8, and on along a straight line.
 */
export class LossCurve {
  /** The answer of the last `follow`. */
  reynolds = Number.NaN;
  /** d reynolds / d loss there. */
  slope = Number.NaN;

  private readonly laminar: number;
  private readonly friction: Friction = { factor: Number.NaN, exponent: Number.NaN };
  private readonly points: (CurvePoint | undefined)[] = [];
  private cell = FIRST_GUESS;
  private below = NOWHERE;
  private above = NOWHERE;

  constructor(
    private readonly slenderness: number,
    private readonly minorLoss: number,
    private readonly relativeRoughness: number,
  ) {
    this.laminar = 64 * slenderness;
  }

  /** Writes `reynolds` and `slope` for a loss of zero or more. A loss that is no number gives none. */
  follow(loss: number): void {
    const root = Math.sqrt(this.laminar * this.laminar + 4 * this.minorLoss * loss);
    const laminarReynolds = (2 * loss) / (this.laminar + root);
    if (!(laminarReynolds > LAMINAR_REYNOLDS)) {
      this.reynolds = laminarReynolds;
      this.slope = 1 / root;
      return;
    }
    if (!(loss >= this.below.loss && loss < this.above.loss)) this.find(loss);
    this.interpolate(loss);
  }

  /** Moves to the two neighbouring points between which the loss lies; past the last, to the last two. */
  private find(loss: number): void {
    let cell = this.cell;
    // On logarithmic scales the curve is nearly straight: a jump or two lands within a step or two.
    for (let jumps = 0; jumps < MOST_JUMPS; jumps++) {
      const { loss: here, exponent } = this.point(cell);
      const jump = Math.floor((roughLogarithm(loss / here) * POINTS_PER_E_FOLD) / exponent);
      cell = Math.max(0, Math.min(LAST - 1, cell + jump));
      if (Math.abs(jump) <= 2) break;
    }
    while (cell > 0 && loss < this.point(cell).loss) cell--;
    while (cell < LAST - 1 && loss >= this.point(cell + 1).loss) cell++;
    this.cell = cell;
    this.below = this.point(cell);
    this.above = this.point(cell + 1);
  }

  private point(index: number): CurvePoint {
    const known = this.points[index];
    if (known) return known;
    const reynolds = gridReynolds[index] as number;
    frictionAt(reynolds, gridViscous[index] as number, this.relativeRoughness, this.friction);
    const pipeLoss = this.friction.factor * this.slenderness;
    const total = pipeLoss + this.minorLoss;
    const loss = total * reynolds * reynolds;
    const exponent = 2 + (this.friction.exponent * pipeLoss) / total;
    const point = { reynolds, loss, slope: reynolds / (exponent * loss), exponent };
    this.points[index] = point;
    return point;
  }

  private interpolate(loss: number): void {
    const { below, above } = this;
    const width = above.loss - below.loss;
    const t = (loss - below.loss) / width;
    if (t > 1) {
      this.slope = above.slope;
      this.reynolds = above.reynolds + above.slope * (loss - above.loss);
      return;
    }
    const rise = above.reynolds - below.reynolds;
    const [first, last] = [below.slope * width, above.slope * width];
    const square = 3 * rise - 2 * first - last;
    const cube = first + last - 2 * rise;
    this.reynolds = below.reynolds + t * (first + t * (square + t * cube));
    this.slope = (first + t * (2 * square + t * 3 * cube)) / width;
  }
}

/** ln x, between 1/3 and 3 by a fraction that is 5 % out at worst and a quarter of the cost. */
function roughLogarithm(x: number): number {
  return x < 3 && x > 1 / 3 ? (2 * (x - 1)) / (x + 1) : Math.log(x);
}
