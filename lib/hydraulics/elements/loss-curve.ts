import { CurvePieces } from './curve-pieces';
import { type CurvePoint, type CurveShape, curvePoint, LAST_POINT, POINTS_PER_OCTAVE } from './curve-point';
import { LAMINAR_REYNOLDS } from './friction';

/** Where a pipe's first search begins: Re 3200, the middle of what fuel lines see. */
const FIRST_GUESS = 2 * POINTS_PER_OCTAVE;
const MOST_JUMPS = 5;
const POINTS_PER_E_FOLD = POINTS_PER_OCTAVE / Math.LN2;

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
  /** d reynolds / d loss where `follow` last was. */
  slope = Number.NaN;

  private readonly laminar: number;
  private readonly laminarEnd: number;
  private readonly firstStretch: number;
  private readonly points: (CurvePoint | undefined)[] = [];
  private readonly pieces = new CurvePieces();
  /** Where the piece last found in each stretch of the curve begins: the next one there is mostly the same. */
  private readonly foundIn: (number | undefined)[] = [];
  /** The piece last searched for. */
  private last = FIRST_GUESS;

  constructor(private readonly shape: CurveShape) {
    this.laminar = 64 * shape.slenderness;
    this.laminarEnd = (this.laminar + shape.minorLoss * LAMINAR_REYNOLDS) * LAMINAR_REYNOLDS;
    this.firstStretch = stretchOf(this.laminarEnd);
  }

  /** The Reynolds number for a loss of zero or more; leaves `slope` behind. A loss that is no number gives none. */
  follow(loss: number): number {
    if (!(loss >= this.laminarEnd)) {
      const root = Math.sqrt(this.laminar * this.laminar + 4 * this.shape.minorLoss * loss);
      this.slope = 1 / root;
      return (2 * loss) / (this.laminar + root);
    }
    const stretch = stretchOf(loss) - this.firstStretch;
    const { rows } = this.pieces;
    let place = this.foundIn[stretch] ?? 0;
    if (!(loss >= (rows[place] as number) && loss < (rows[place + 1] as number))) {
      place = this.find(loss, place);
      if (this.last < LAST_POINT) this.foundIn[stretch] = place;
    }
    const beyond = loss - (rows[place] as number);
    const slope = rows[place + 3] as number;
    const square = rows[place + 4] as number;
    const cube = rows[place + 5] as number;
    this.slope = slope + beyond * (2 * square + beyond * 3 * cube);
    return (rows[place + 2] as number) + beyond * (slope + beyond * (square + beyond * cube));
  }

  /** Where the piece begins on which the loss lies; past the last point, the straight line. `near` is 0 or a place beside. */
  private find(loss: number, near: number): number {
    const { rows } = this.pieces;
    let index = near > 0 ? (rows[near + 6] as number) : this.jump(loss);
    let place = this.placeOf(index);
    while (index > 0 && loss < (rows[place] as number)) place = this.placeOf(--index);
    while (index < LAST_POINT && loss >= (rows[place + 1] as number)) place = this.placeOf(++index);
    this.last = index;
    return place;
  }

  /** A piece close to the loss. On logarithmic scales the curve is nearly straight: a jump or two lands beside it. */
  private jump(loss: number): number {
    let index = this.last;
    for (let jumps = 0; jumps < MOST_JUMPS; jumps++) {
      const { loss: here, exponent } = this.point(index);
      const jump = Math.floor((roughLogarithm(loss / here) * POINTS_PER_E_FOLD) / exponent);
      index = Math.max(0, Math.min(LAST_POINT, index + jump));
      if (Math.abs(jump) <= 2) break;
    }
    return index;
  }

  private placeOf(piece: number): number {
    return this.pieces.place(piece) ?? this.make(piece);
  }

  private make(piece: number): number {
    const below = this.point(piece);
    if (piece === LAST_POINT) return this.pieces.extend(piece, below);
    return this.pieces.join(piece, below, this.point(piece + 1));
  }

  private point(index: number): CurvePoint {
    const known = this.points[index];
    if (known) return known;
    const point = curvePoint(this.shape, index);
    this.points[index] = point;
    return point;
  }
}

const asDouble = new Float64Array(1);
const asWords = new Uint32Array(asDouble.buffer);
/** Which of the two words holds the exponent depends on the machine's byte order. */
const HIGH_WORD = new Uint8Array(Uint16Array.of(1).buffer)[0] === 1 ? 1 : 0;

/** Sixty-four stretches to the octave, told from a double's exponent and first six binary places alone. */
function stretchOf(loss: number): number {
  asDouble[0] = loss;
  return (asWords[HIGH_WORD] as number) >>> 14;
}

/** ln x, between 1/3 and 3 by a fraction that is 5 % out at worst and a quarter of the cost. */
function roughLogarithm(x: number): number {
  return x < 3 && x > 1 / 3 ? (2 * (x - 1)) / (x + 1) : Math.log(x);
}
