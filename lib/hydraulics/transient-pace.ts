import type { Second } from '../units';

/** How long steps may be. */
export interface PaceOptions {
  longestStep?: Second;
  /** Step from the start and from each break. */
  firstStep?: Second;
  /** A step that cannot be solved is halved down to this. */
  smallestStep?: Second;
  /** Takes steps of this length, without looking at the error. For measuring the order. */
  fixedStep?: Second;
}

const FIRST_STEP: Second = 1e-4;
const SMALLEST_STEP: Second = 1e-8;
/** A step may grow or shrink by no more than these. BDF2 with growing steps is stable up to 1 + √2. */
const LARGEST_GROWTH = 2;
const LARGEST_CUT = 0.2;
const SAFETY = 0.9;
/** The first step takes no more than this share of the way to the next break. */
const FIRST_SHARE = 0.1;
const ROUNDING = 1e-9;

/** Chooses the length of each step from how the last ones went. */
export class Pace {
  private readonly longest: Second;
  private readonly first: Second;
  private readonly smallest: Second;
  private readonly isFixed: boolean;
  private step: Second = 0;
  private justCut = false;

  constructor({ longestStep, firstStep, smallestStep, fixedStep }: PaceOptions) {
    this.longest = fixedStep ?? longestStep ?? Number.POSITIVE_INFINITY;
    this.smallest = Math.min(smallestStep ?? SMALLEST_STEP, this.longest);
    this.first = Math.max(this.smallest, Math.min(fixedStep ?? firstStep ?? FIRST_STEP, this.longest));
    this.isFixed = fixedStep !== undefined;
  }

  restart(remaining: Second): void {
    this.step = this.isFixed ? this.first : Math.min(this.first, FIRST_SHARE * remaining);
    this.justCut = false;
  }

  /** The next step, so that the way to the next break is not left with a sliver. */
  lengthWithin(remaining: Second): Second {
    if (this.step >= remaining * (1 - ROUNDING)) return remaining;
    return this.step > remaining / 2 && !this.isFixed ? remaining / 2 : this.step;
  }

  /** Whether a step with this error, relative to what is allowed, may stand. */
  allows(length: Second, error: number): boolean {
    return error <= 1 || this.isFixed || length <= this.smallest;
  }

  /** After a step that stands. A step just cut must first show that it was cut enough. */
  grow(length: Second, error: number, order: number): void {
    if (this.isFixed) return;
    const limit = this.justCut ? 1 : LARGEST_GROWTH;
    this.step = Math.min(this.longest, length * Math.min(limit, factor(error, order)));
    this.justCut = false;
  }

  /** After a step whose error was too large. */
  shorten(length: Second, error: number, order: number): void {
    this.cutTo(length * factor(error, order));
  }

  /** After a step that could not be solved. Whether there is a shorter one to try. */
  halve(length: Second): boolean {
    if (length <= this.smallest || this.isFixed) return false;
    this.cutTo(length / 2);
    return true;
  }

  private cutTo(length: Second): void {
    this.step = Math.max(this.smallest, length);
    this.justCut = true;
  }
}

function factor(error: number, order: number): number {
  return Math.max(LARGEST_CUT, SAFETY * (error + 1e-6) ** (-1 / (order + 1)));
}
