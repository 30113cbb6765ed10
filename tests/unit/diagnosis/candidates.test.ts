import { describe, expect, test } from 'vitest';
import { type Candidate, instrumentFor } from '@/lib/diagnosis/candidates';
import type { Gauge } from '@/lib/gauges/gauge';
import { catalogue } from '../../support/bench-rig';
import { aGauge } from '../../support/gauge';

const small = aGauge({ id: 'small' });
const large = aGauge({ id: 'large', range: { min: 0, max: 4000 } });
const stopping = aGauge({
  id: 'stopping',
  accuracy: { kind: 'class', percentOfSpan: 5 },
  overRange: { kind: 'stops' },
});

function candidate(instruments: readonly Gauge[]): Candidate {
  const check = catalogue.checks.get('gear-pump-pressure');
  const quantity = check?.quantities[0];
  if (!check || !quantity) throw new Error('no such check');
  return { check, condition: 'idle', quantities: [quantity], instruments };
}

/** Ten-thousandths of belief in a pressure, each a particle of its own; the rest is in 50 kPa. */
function taken(instruments: readonly Gauge[], ...above: readonly [count: number, pascal: number][]): string {
  const light = above.flatMap(([count, pascal]) => new Array<number>(count).fill(pascal));
  const expected = Float64Array.of(50e3, ...light);
  const belief = Float64Array.of(1 - light.length * 1e-4, ...light.map(() => 1e-4));
  return instrumentFor(candidate(instruments), expected, belief).id;
}

describe('an expert takes', () => {
  test('the surest of the instruments that show what may be there', () => {
    expect(taken([large, small])).toBe('small');
    expect(taken([stopping, small])).toBe('small');
  });

  test('none that more than a thousandth of belief goes beyond, spread as it may be', () => {
    expect(taken([small, large], [9, 110e3])).toBe('small');
    expect(taken([small, large], [11, 110e3])).toBe('large');
    expect(taken([small, large], [6, 110e3], [5, 900e3])).toBe('large');
  });

  test('where none shows it all, one that survives', () => {
    expect(taken([small, stopping], [11, 120e3])).toBe('small');
    expect(taken([small, stopping], [11, 200e3])).toBe('stopping');
    expect(taken([small, stopping], [9, 200e3], [50, 120e3])).toBe('small');
  });

  test('no other because of what cannot be computed', () => {
    expect(taken([small, large], [500, Number.NaN], [500, Number.POSITIVE_INFINITY])).toBe('small');
  });

  test('the procedure’s own where two are as sure', () => {
    expect(taken([{ ...small, id: 'own' }, small])).toBe('own');
  });
});
