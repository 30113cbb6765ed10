import { expect, test } from 'vitest';
import { codeText, describeCase } from '@/lib/cases/describe-case';
import { catalogue } from '../../support/bench-rig';
import { aCase } from '../../support/worked-attempt';

const described = describeCase(aCase({ cause: 'inlet-screen-plugged', severity: 0.9 }), catalogue);

function reading(check: string, condition: string, quantity = check, of = described) {
  return of.readings.find((line) => line.check === check && line.condition === condition && line.quantity === quantity);
}

test('a described case names its truth, its element and what made it', () => {
  expect(described).toMatchObject({
    rig: 'tern-13',
    causes: [{ id: 'inlet-screen-plugged', element: 'inlet-screen', severity: 0.9 }],
    contentHash: catalogue.contentHash,
  });
});

test('readings cover every check of the rig under every condition of its procedure', () => {
  const here = [...catalogue.checks.values()].filter(({ ports }) => ports['tern-13']);
  const expected = here.flatMap(({ id, conditions, quantities }) =>
    conditions.flatMap((condition) => quantities.map((quantity) => `${id} ${condition} ${quantity.id}`)),
  );
  expect(described.readings.map(({ check, condition, quantity }) => `${check} ${condition} ${quantity}`)).toEqual(
    expected,
  );
});

test('a reading across two ports names both', () => {
  expect(reading('screen-drop', 'full-load')?.port).toBe('F2-F3');
});

test('value is what the instrument shows, si the truth behind it', () => {
  const drop = reading('screen-drop', 'full-load');
  const { pressures } = described.state['full-load'];
  const truth = (pressures['main-filter-outlet'] ?? 0) - (pressures['metering-inlet'] ?? 0);
  expect(drop).toMatchObject({ unit: 'kPa', si: truth, verdict: 'fail', limit: { max: 30, unit: 'kPa' } });
  // Class 0.25 of 1,500 kPa is 3.75 kPa, and half a digit is rounded away.
  expect(Math.abs((drop?.value ?? 0) * 1e3 - truth)).toBeLessThanOrEqual(4.25e3);
});

test('what the sheet gives no limit for has neither limit nor verdict', () => {
  expect(reading('rail-pressure', 'idle', 'commanded-rail-pressure')).toMatchObject({ limit: null, verdict: null });
});

test('a lost instrument has no value and no verdict', () => {
  const gauge = catalogue.gauges.get('dial-0-300-psi') as NonNullable<ReturnType<typeof catalogue.gauges.get>>;
  const fragile = { ...gauge, overRange: { kind: 'destroyed', ratio: 1 } as const, range: { min: 0, max: 10 } };
  const gauges = new Map([...catalogue.gauges, [gauge.id, fragile]]);
  const lost = describeCase(aCase({ cause: 'no-fuel-fault' }), { ...catalogue, gauges });
  expect(reading('gear-pump-pressure', 'idle', 'gear-pump-pressure', lost)).toMatchObject({
    value: null,
    verdict: null,
  });
});

test('codes carry the words of the standard, and numbers where it has none here', () => {
  expect(codeText(catalogue, 157, 18)).toBe('Injector metering rail pressure: below normal, moderately severe');
  expect(codeText(catalogue, 520192, 22)).toBe('SPN 520192: FMI 22');
});
