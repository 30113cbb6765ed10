import { expect, test } from 'vitest';
import { drawCases } from '../support/drawn-cases';

// One of eight parts of 20,000 seeds, so that the test workers share them.
test('2,500 seeds over all rigs, plain and hardest, all solve, and each complaint and code follows from the state', () => {
  expect(drawCases('damson', 2500)).toEqual({
    complaints: ['hunts', 'lacks-power', 'starts-slowly', 'warning-lamp', 'will-not-start'],
    unsolved: [],
  });
}, 300_000);
