import type { Second } from '../units';

/** Where the nodes were at one time. Arrays are indexed like the network's nodes. */
export interface Instant {
  time: Second;
  pressures: Float64Array;
  /** Volume held, m³. */
  volumes: Float64Array;
}

/** The polynomial through the last three instants has this degree at most. */
const REMEMBERED = 3;

/** The last few instants of a transient, in buffers that are used again and again. */
export class History {
  /** Newest first. One more than is remembered: the last is written to next. */
  private readonly instants: Instant[];
  private readonly weights = new Float64Array(REMEMBERED);
  private remembered = 1;

  constructor(nodes: number) {
    this.instants = Array.from({ length: REMEMBERED + 1 }, () => ({
      time: 0,
      pressures: new Float64Array(nodes),
      volumes: new Float64Array(nodes),
    }));
  }

  /** How many instants count, 1…3. */
  get length(): number {
    return this.remembered;
  }

  get last(): Instant {
    return this.instants[0] as Instant;
  }

  get before(): Instant {
    return this.instants[1] as Instant;
  }

  /** Where the next instant is worked out. It counts once `accept` was called. */
  get next(): Instant {
    return this.instants[REMEMBERED] as Instant;
  }

  accept(): void {
    const { next, instants } = this;
    for (let slot = REMEMBERED; slot > 0; slot--) instants[slot] = instants[slot - 1] as Instant;
    instants[0] = next;
    this.remembered = Math.min(REMEMBERED, this.remembered + 1);
  }

  /** Forgets all but the last instant: what comes after it does not continue what was before. */
  restart(): void {
    this.remembered = 1;
  }

  /** Time between two neighbouring instants, newest first. */
  gap(back: number): Second {
    return (this.instants[back] as Instant).time - (this.instants[back + 1] as Instant).time;
  }

  /** Prepares `extrapolate`: Lagrange's weights of the instants at a time. */
  aimAt(time: Second): void {
    for (let one = 0; one < this.remembered; one++) {
      const at = (this.instants[one] as Instant).time;
      let weight = 1;
      for (let other = 0; other < this.remembered; other++) {
        const elsewhere = (this.instants[other] as Instant).time;
        if (other !== one) weight *= (time - elsewhere) / (at - elsewhere);
      }
      this.weights[one] = weight;
    }
  }

  /** What the polynomial through the instants gives for a node at the time aimed at. */
  extrapolate(quantity: 'pressures' | 'volumes', node: number): number {
    let sum = 0;
    for (let one = 0; one < this.remembered; one++) {
      sum += (this.weights[one] as number) * ((this.instants[one] as Instant)[quantity][node] as number);
    }
    return sum;
  }
}
