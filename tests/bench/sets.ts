import { drawCase } from '@/lib/sets/draw-case';
import type { CaseWishes } from '@/lib/sets/set-body';
import { catalogue } from '../support/bench-rig';
import { type Spread, spreadOf, timed } from './spread';

/** What a set of sixty is asked for, in turn. */
const WISHES: readonly CaseWishes[] = [
  {},
  { topics: ['suction-tank-and-air'], faults: 'single' },
  { rigs: ['tern-13'], difficulty: [-0.5, 0.5] },
  { topics: ['high-pressure-and-leakage', 'metering-and-rail-control'], minutes: 40 },
  { hardest: true },
];
const SLOTS = 60;
const ROUNDS = [0, 1];

/** Seconds for a set of sixty seeded slots, every case drawn with its certificate, on one core. */
export function measureSet(): Spread {
  // A round is long enough to warm up in.
  const times = ROUNDS.map((round) => timed(() => drawAll(round)));
  return spreadOf(times.map((time) => time / 1000));
}

function drawAll(round: number): void {
  for (let slot = 0; slot < SLOTS; slot++) {
    const wishes = WISHES[slot % WISHES.length] ?? {};
    const drawn = drawCase({ id: 'a', kind: 'cases', count: 1, wishes }, `bench ${round} ${slot}`, catalogue);
    if ('unmet' in drawn) throw new Error(`Slot ${slot}: ${drawn.unmet}`);
  }
}
