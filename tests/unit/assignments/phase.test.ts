import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closesFor, endsAt, lateCost, phaseOf, phases, type Timed, takenUntil, toldAt } from '@/lib/assignments/phase';

const at = (hour: number, minute = 0) => new Date(Date.UTC(2026, 2, 2, hour, minute));

function anAssignment(rules: Partial<Timed['rules']> = {}): Timed {
  return {
    rules: { mode: 'assessed', minutes: 60, late: 'refused', ...rules },
    opensAt: at(8),
    closesAt: at(12),
  };
}
const late = { hours: 2, cost: 10 };

describe('where an assignment stands', () => {
  test.each([
    [at(7, 59), 'coming'],
    [at(8), 'open'],
    [at(11, 59), 'open'],
    [at(12), 'late'],
    [at(13, 59), 'late'],
    [at(14), 'closed'],
  ])('at %s it is %s', (now, phase) => {
    expect(phaseOf(anAssignment({ late }), now)).toBe(phase);
  });

  test('without a late rule it is closed at once', () => {
    expect(phaseOf(anAssignment(), at(12))).toBe('closed');
  });

  test('it is open longer for somebody who gets more time', () => {
    expect(phaseOf(anAssignment(), at(12, 14), { extraTime: 0.25 })).toBe('open');
    expect(phaseOf(anAssignment(), at(12, 15), { extraTime: 0.25 })).toBe('closed');
  });

  test('more time of no limit is no more time', () => {
    expect(phaseOf(anAssignment({ minutes: null }), at(12), { extraTime: 0.5 })).toBe('closed');
  });
});

describe('when a turn ends', () => {
  test.each([
    [{}, at(9), 0, at(10)],
    [{}, at(9), 0.25, at(10, 15)],
    [{}, at(11, 30), 0, at(12)],
    [{}, at(11, 30), 0.5, at(12, 30)],
    [{ minutes: null }, at(9), 0, at(12)],
    [{ late }, at(11, 30), 0, at(12, 30)],
    [{ late }, at(13, 30), 0, at(14)],
    [{ minutes: null, late }, at(9), 0, at(14)],
  ])('under %o, begun at %s with %s on top, at %s', (rules, startedAt, extraTime, ends) => {
    expect(endsAt(anAssignment(rules), startedAt, extraTime)).toBe(ends.getTime());
  });
});

describe('what being late costs', () => {
  test('nothing at the closing itself, and all of it a moment later', () => {
    expect(lateCost(anAssignment({ late }), at(12), 0)).toBe(0);
    expect(lateCost(anAssignment({ late }), new Date(at(12).getTime() + 1), 0)).toBe(10);
  });

  test('nothing within the minutes that somebody gets on top', () => {
    expect(lateCost(anAssignment({ late }), at(12, 15), 0.25)).toBe(0);
    expect(lateCost(anAssignment({ late }), at(12, 16), 0.25)).toBe(10);
  });

  test('nothing where it was taken as it stood', () => {
    expect(lateCost(anAssignment(), at(12, 1), 0)).toBe(0);
  });
});

describe('from when outcomes are told', () => {
  test('of practice from the first', () => {
    expect(toldAt(anAssignment({ mode: 'practice', late }), 0.5)).toBe(at(8).getTime());
  });

  test('of assessed work when nobody has time left', () => {
    expect(toldAt(anAssignment(), 0)).toBe(at(12).getTime());
    expect(toldAt(anAssignment({ late }), 0)).toBe(at(14).getTime());
    expect(toldAt(anAssignment({ late }), 0.5)).toBe(at(14, 30).getTime());
  });
});

const timed = fc.record({
  rules: fc.record({
    mode: fc.constant('assessed' as const),
    minutes: fc.option(fc.integer({ min: 5, max: 600 }), { nil: null }),
    late: fc.oneof(
      fc.constant('refused' as const),
      fc.record({ hours: fc.integer({ min: 1, max: 720 }), cost: fc.integer({ min: 0, max: 100 }) }),
    ),
  }),
  opensAt: fc.constant(at(8)),
  closesAt: fc.integer({ min: 1, max: 100_000 }).map((minutes) => new Date(at(8).getTime() + minutes * 60_000)),
});
const extra = fc.constantFrom(0, 0.1, 0.25, 0.5, 1);
const minutesIn = fc.integer({ min: -10, max: 200_000 });

test('nobody works on after outcomes are told, and nobody is cut off before the others', () => {
  fc.assert(
    fc.property(timed, extra, extra, minutesIn, (assignment, one, other, minutes) => {
      const startedAt = new Date(assignment.opensAt.getTime() + minutes * 60_000);
      const most = Math.max(one, other);
      expect(endsAt(assignment, startedAt, one) <= toldAt(assignment, most)).toBe(true);
      expect(endsAt(assignment, startedAt, most) >= endsAt(assignment, startedAt, one)).toBe(true);
      expect(closesFor(assignment, one) <= takenUntil(assignment, one)).toBe(true);
    }),
  );
});

test('phases follow each other and never go back', () => {
  fc.assert(
    fc.property(timed, extra, minutesIn, fc.integer({ min: 0, max: 50_000 }), (assignment, extraTime, from, step) => {
      const moment = (minutes: number) => new Date(assignment.opensAt.getTime() + minutes * 60_000);
      const index = (minutes: number) => phases.indexOf(phaseOf(assignment, moment(minutes), { extraTime }));
      expect(index(from + step)).toBeGreaterThanOrEqual(index(from));
    }),
  );
});
