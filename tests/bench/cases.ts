import { seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { describeCase } from '@/lib/cases/describe-case';
import { catalogue } from '../support/bench-rig';
import { rounds, type Spread, spreadOf } from './spread';

const STEADY = { cases: 100, rounds: 40 };
const TRACED = { cases: 5, rounds: 20 };

/** Milliseconds per case on one core, each drawn from its seed with every reading in every condition. */
export function measureCases(traces: boolean): Spread {
  const { cases, rounds: count } = traces ? TRACED : STEADY;
  const times = rounds(count, (round) => {
    for (let index = 0; index < cases; index++) {
      const seed = seedFromWord(`bench ${round} ${index}`);
      describeCase(caseFromSeed({ rig: 'tern-13', seed }, catalogue), catalogue, traces);
    }
  });
  return spreadOf(times.map((time) => time / cases));
}

const MANY = 100_000;
const SETTLED_AFTER = 10_000;

/**
 * Heap after a collection, MB: after the first ten thousand cases of one process and after a hundred thousand. Undefined
 * where the collector cannot be called (`node --expose-gc`).
 */
export function measureMemory(): { early: number; late: number } | undefined {
  const collect = globalThis.gc;
  if (!collect) return undefined;
  const heap = () => {
    collect();
    return process.memoryUsage().heapUsed / 1e6;
  };
  const rigs = [...catalogue.rigs.keys()];
  let early = 0;
  for (let index = 0; index < MANY; index++) {
    const rig = rigs[index % rigs.length] ?? '';
    caseFromSeed({ rig, seed: seedFromWord(`memory ${index}`) }, catalogue);
    if (index === SETTLED_AFTER) early = heap();
  }
  return { early, late: heap() };
}
