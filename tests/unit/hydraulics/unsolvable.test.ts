import { expect, test } from 'vitest';
import type { Law } from '@/lib/hydraulics/elements/element';
import { SolveError } from '@/lib/hydraulics/errors';
import type { Network } from '@/lib/hydraulics/network';
import { solve, trySolve } from '@/lib/hydraulics/solve';
import { aNetwork, bridge, flatStart, HIGH, LOW, orifice } from './tiny-network';

test('a node whose pressure no flow answers to is named', () => {
  const network = aNetwork({ in: HIGH, island: undefined }, [['in', 'island', constantFlow(1e-5)]]);
  expect(trySolve(network, { start: flatStart(network) })).toEqual({ code: 'singular', node: 'island' });
  expect(() => solve(network, { start: flatStart(network) })).toThrow(/pressure at island is not determined/);
});

test('a balance that cannot be met names its node, what it misses and how long was tried', () => {
  const network = aNetwork({ in: HIGH, trap: undefined, out: LOW }, [
    ['in', 'trap', constantFlow(1e-3)],
    ['trap', 'out', saturating(1e-4)],
  ]);
  const failure = failureOf(network);
  expect(failure).toMatchObject({ code: 'not-converged', node: 'trap' });
  // What comes in cannot leave: at best 9e-4 m³/s stay, with the sign of a net outflow.
  if (failure.code === 'not-converged') {
    expect(failure.residual).toBeCloseTo(-9e-4, 6);
    expect(failure.iterations).toBeGreaterThan(0);
  }
});

test('too few iterations fail as typed and not as a wrong number', () => {
  const network = bridge(2, 1, 1, 2);
  const outcome = trySolve(network, { start: flatStart(network, 9e6), maxIterations: 1 });
  expect(outcome).toMatchObject({ code: 'not-converged', iterations: 1 });
});

test('a law that gives no number fails at its node', () => {
  const broken: Law = (_inlet, _outlet, result) => {
    result.flow = Number.NaN;
    result.perInlet = 1e-9;
    result.perOutlet = -1e-9;
  };
  const network = aNetwork({ in: HIGH, middle: undefined, out: LOW }, [
    ['in', 'middle', broken],
    ['middle', 'out', orifice(1)],
  ]);
  expect(failureOf(network)).toMatchObject({ node: 'middle' });
});

test('nodes joined only to each other have no pressure to rest on, even where nothing flows', () => {
  const network = aNetwork({ in: HIGH, attic: undefined, cellar: undefined, out: LOW }, [
    ['in', 'out', orifice(1)],
    ['attic', 'cellar', orifice(1)],
  ]);
  expect(failureOf(network)).toEqual({ code: 'no-reference-pressure', nodes: ['attic', 'cellar'] });
});

test('the error says its reason in words', () => {
  expect(new SolveError({ code: 'no-reference-pressure', nodes: ['attic', 'cellar'] }).message).toBe(
    'No fixed pressure reaches attic, cellar',
  );
  const unmet = { code: 'not-converged', node: 'trap', residual: 1e-4, iterations: 7, demand: 0 } as const;
  expect(new SolveError(unmet).message).toMatch(/trap .* 0\.0001 m³\/s after 7 iterations/);
});

function constantFlow(flow: number): Law {
  return (_inlet, _outlet, result) => {
    result.flow = flow;
    result.perInlet = 0;
    result.perOutlet = 0;
  };
}

/** Never passes more than `most`, however hard it is pushed. */
function saturating(most: number): Law {
  return (inlet, outlet, result) => {
    const push = (inlet - outlet) / 1e5;
    result.flow = (most * push) / Math.hypot(1, push);
    result.perInlet = most / 1e5 / Math.hypot(1, push) ** 3;
    result.perOutlet = -result.perInlet;
  };
}

function failureOf(network: Network) {
  try {
    solve(network, { start: flatStart(network) });
  } catch (error) {
    if (error instanceof SolveError) return error.failure;
  }
  throw new Error('The network was solved');
}
