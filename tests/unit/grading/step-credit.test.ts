import { describe, expect, test } from 'vitest';
import type { Shown } from '@/lib/checks/shown';
import type { CheckWorth } from '@/lib/diagnosis/next-check';
import type { ReadingAct } from '@/lib/grading/acts';
import { creditOf, type Moment, soonerThan } from '@/lib/grading/step-credit';
import { aReading } from '../../support/attempt-rows';
import { catalogue } from '../../support/bench-rig';
import { standardRubric } from '../../support/marking';

const marking = { catalogue, rubric: standardRubric() };

function worth(check: string, perMinute: number): CheckWorth {
  const minutes = catalogue.checks.get(check)?.minutes ?? 0;
  return { check, condition: 'idle', instrument: 'any', minutes, gain: perMinute * minutes, perMinute, saves: 0 };
}

const bus = worth('rail-pressure', 0.1);
const screen = worth('screen-drop', 0.05);
const prime = worth('prime-pressure', 0.095);
const reading = aReading({ check: 'screen-drop' });

function moment(changes: Partial<Moment>): Moment {
  return { open: [bus, prime, screen], worth: screen, repeated: false, over: false, proves: false, ...changes };
}

function credit(changes: Partial<Moment>, read: ReadingAct = reading) {
  return creditOf(marking, read, moment(changes));
}

describe('the minutes of a reading', () => {
  test('count by its worth per minute over that of the best', () => {
    expect(credit({})).toEqual({ code: 'step-less-telling', credit: 0.5 });
    expect(credit({ worth: bus })).toEqual({ code: 'step-telling', credit: 1 });
  });

  test('count in full within a tenth of the best', () => {
    expect(credit({ worth: prime })).toEqual({ code: 'step-telling', credit: 1 });
  });

  test('do not count where nothing was to be learnt', () => {
    expect(credit({ worth: undefined })).toEqual({ code: 'step-less-telling', credit: 0 });
  });

  test('do not count the second time', () => {
    expect(credit({ worth: bus, repeated: true })).toEqual({ code: 'step-repeated', credit: 0 });
  });

  test('do not count where the gauge was lost or a jet came', () => {
    const shown: Shown[] = [{ kind: 'destroyed', quantity: 'prime-pressure' }];
    expect(credit({ worth: bus }, { ...reading, shown })).toEqual({ code: 'step-lost', credit: 0 });
  });

  test('of a trace count by half, as nobody reckons beforehand what it tells', () => {
    const trace = aReading({ check: 'crank-trace' });
    expect(credit({ worth: undefined }, trace)).toEqual({ code: 'trace-unrated', credit: 0.5 });
  });

  test('count, once the repair is settled, only for measuring the part', () => {
    expect(credit({ over: true, worth: bus })).toEqual({ code: 'step-settled', credit: 0 });
    expect(credit({ over: true, proves: true })).toEqual({ code: 'step-proof', credit: 1 });
    expect(credit({ over: true }, aReading({ check: 'crank-trace' })).credit).toBe(0);
  });
});

describe('the order of checks', () => {
  const sooner = (changes: Partial<Moment>, check = 'screen-drop') =>
    soonerThan(marking, aReading({ check }), moment(changes))?.check;

  test('a short check that tells as much per minute comes before a long one', () => {
    expect(sooner({})).toBe('rail-pressure');
    expect(sooner({ open: [worth('rail-pressure', 0.05), screen] })).toBe('rail-pressure');
  });

  test('one that tells less need not come first, nor one that is not short', () => {
    expect(sooner({ open: [screen, worth('rail-pressure', 0.04)] })).toBeUndefined();
    expect(sooner({ open: [prime, screen] })).toBeUndefined();
  });

  test('a check that is not long and opens nothing may come whenever it likes', () => {
    expect(sooner({ worth: prime }, 'prime-pressure')).toBeUndefined();
  });

  test('opening a high-pressure fitting comes after all that is short and tells as much', () => {
    expect(sooner({ worth: worth('high-pressure-fitting', 0.01) }, 'high-pressure-fitting')).toBe('rail-pressure');
  });

  test('where its worth is not known, or the repair is settled, no order is asked for', () => {
    expect(sooner({ worth: undefined })).toBeUndefined();
    expect(sooner({ over: true })).toBeUndefined();
    expect(sooner({ repeated: true })).toBeUndefined();
  });
});
