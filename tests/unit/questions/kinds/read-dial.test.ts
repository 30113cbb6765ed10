import { expect, test } from 'vitest';
import { isRuled, scalePlace } from '@/lib/questions/kinds/read-dial/scale-place';
import { readingSlips } from '@/lib/questions/kinds/read-dial/slips';
import { catalogue } from '../../../support/bench-rig';

test.each<[string, number, number, number]>([
  ['dial-0-300-psi', 62.5, 50, 2.5],
  ['dial-0-100-kpa', 39, 20, 9.5],
  ['vacuum-dial-0-30-inhg', 10.25, 10, 0.5],
  // Below zero the scale still climbs towards zero: three divisions past −50.
  ['compound-dial-100-150-kpa', -35, -50, 3],
])('on the %s %d stands past %d by %d divisions', (id, value, number, divisions) => {
  expect(scalePlace(value, ruled(id))).toEqual({ number, divisions });
});

test.each<[string, string, string, number, string, number]>([
  ['psi read as kPa', 'gear-pump-pressure', 'dial-0-300-psi', 170, 'slipUnit', 170 / 6.894757293168],
  ['each mark of 2 kPa counted as 1', 'return-restriction', 'dial-0-100-kpa', 36, 'slipStep', 28],
  ['a vacuum taken for a pressure', 'return-restriction', 'compound-dial-100-150-kpa', -35, 'slipSign', 35],
  ['counted away from zero', 'return-restriction', 'compound-dial-100-150-kpa', -35, 'slipAway', -65],
  ['a vacuum written with a minus', 'tank-vent', 'vacuum-dial-0-60-kpa', 12, 'slipMinus', -12],
  ['the next number taken for the one before', 'tank-vent', 'vacuum-dial-0-60-kpa', 12, 'slipNext', 22],
  ['the air added', 'return-restriction', 'dial-0-100-kpa', 36, 'slipAbsolute', 137.325],
])('%s is known by name', (_, check, gauge, value, say, wrong) => {
  const slips = slipsOf(check, gauge, value);
  const found = slips.filter(({ line }) => 'say' in line && line.say === say).map((slip) => slip.value);
  expect(found).toContainEqual(expect.closeTo(wrong, 9));
});

test('either end of a swing is a wrong reading where it lies further off than the scale can be read', () => {
  const ends = (flutter: number) =>
    slipsOf('gear-pump-pressure', 'dial-0-300-psi', 162.5, flutter)
      .filter(({ line }) => 'say' in line && line.say === 'slipSwing')
      .map(({ value }) => value);
  expect(ends(10)).toEqual([172.5, 152.5]);
  expect(ends(5)).toEqual([]);
});

function slipsOf(id: string, gaugeId: string, value: number, flutter?: number) {
  const check = catalogue.checks.get(id);
  const quantity = check?.quantities[0];
  if (!check || !quantity) throw new Error('No such check');
  const gauge = ruled(gaugeId);
  return readingSlips({ check, quantity, gauge, value, flutter }, gauge.scale.minor / 2);
}

function ruled(id: string) {
  const gauge = catalogue.gauges.get(id);
  if (!gauge || !isRuled(gauge)) throw new Error(`${id} has no scale`);
  return gauge;
}
