import { describe, expect, test } from 'vitest';
import { readAssignmentForm } from '@/app/_server/assignments/read-assignment-form';

const now = new Date(Date.UTC(2026, 2, 1, 12));

function aForm(changes: Record<string, string | readonly string[] | undefined> = {}): FormData {
  const usual = {
    setId: 'supply',
    title: 'Supply side',
    classIds: ['morning'],
    opens: '2026-03-02T08:00',
    closes: '2026-03-09T08:00',
    timeZone: 'Europe/Berlin',
    turns: '2',
    seeds: 'parallel',
    mode: 'assessed',
    minutes: '60',
    late: 'taken',
    lateHours: '24',
    lateCost: '10',
  };
  const form = new FormData();
  for (const [name, value] of Object.entries({ ...usual, ...changes }))
    for (const one of value === undefined ? [] : [value].flat()) form.append(name, one);
  return form;
}

test('a form that is filled in is what is wanted, in the moments of its clock', () => {
  expect(readAssignmentForm(aForm({ personIds: ['ada', 'ada'], anonymous: 'on' }), now)).toEqual({
    wanted: {
      setId: 'supply',
      title: 'Supply side',
      classIds: ['morning'],
      personIds: ['ada'],
      opensAt: new Date('2026-03-02T07:00Z'),
      closesAt: new Date('2026-03-09T07:00Z'),
      rules: {
        opens: '2026-03-02T08:00',
        closes: '2026-03-09T08:00',
        timeZone: 'Europe/Berlin',
        turns: 2,
        seeds: 'parallel',
        mode: 'assessed',
        minutes: 60,
        late: { hours: 24, cost: 10 },
        weights: null,
        anonymous: true,
        secondMarker: false,
      },
    },
  });
});

describe('what is wrong is said at its field', () => {
  const weights = { ownWeights: 'on', 'weight.verdicts': '40', 'weight.reasons': '20' };
  const rest = { 'weight.call': '20', 'weight.route': '10' };
  test.each([
    [{ setId: '' }, { setId: 'missing' }],
    [{ title: '  ' }, { title: 'missing' }],
    [{ title: 'x'.repeat(121) }, { title: 'too-long' }],
    [{ classIds: undefined }, { whom: 'nobody' }],
    [{ timeZone: 'Mars/Olympus' }, { timeZone: 'no-zone' }],
    [{ opens: '' }, { opens: 'missing' }],
    [{ opens: '2026-02-30T08:00' }, { opens: 'no-date' }],
    [{ closes: '2026-03-29T02:30' }, { closes: 'skipped' }],
    [{ closes: '2026-03-02T08:00' }, { closes: 'before-opening' }],
    [{ opens: '2026-02-01T08:00', closes: '2026-02-02T08:00' }, { closes: 'in-the-past' }],
    [{ closes: '2026-03-02T08:59' }, { minutes: 'window-too-short' }],
    [{ minutes: '4' }, { minutes: 'minutes' }],
    [{ minutes: '1e2' }, { minutes: 'minutes' }],
    [{ turns: '11' }, { turns: 'turns' }],
    [{ turns: '1.5' }, { turns: 'turns' }],
    [{ lateHours: '0' }, { lateHours: 'hours' }],
    [{ lateCost: '-1' }, { lateCost: 'cost' }],
    [{ ...weights, ...rest, 'weight.practice': '11' }, { weights: 'not-100' }],
    [{ ...weights, ...rest }, { weights: 'not-100' }],
    [
      { setId: '', turns: '', minutes: 'x' },
      { setId: 'missing', turns: 'turns', minutes: 'minutes' },
    ],
  ])('%o', (changes, wrong) => {
    expect(readAssignmentForm(aForm(changes), now)).toEqual({ wrong });
  });

  test('but not at a field that does not count', () => {
    const read = readAssignmentForm(aForm({ late: 'refused', lateHours: 'x', 'weight.call': 'x' }), now);
    expect(read).toMatchObject({ wanted: { rules: { late: 'refused', weights: null } } });
  });

  test('and weights that sum to a hundred count', () => {
    const read = readAssignmentForm(aForm({ ...weights, ...rest, 'weight.practice': '10' }), now);
    const wanted = { verdicts: 40, reasons: 20, call: 20, route: 10, practice: 10 };
    expect(read).toMatchObject({ wanted: { rules: { weights: wanted } } });
  });
});
