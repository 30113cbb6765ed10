import type { Rows } from './direction-rows';

/*
 * plover-7: what each cause is known by, and no more. Unlike the other tables this one claims only the cells that it lists.
 * Reasoned from hydraulics; the sizes of some readings had been seen before. The supply pump's line falls from 900 kPa:
 * what holds fuel back behind it raises the pressure at the filter, what holds it back ahead lowers it. The pressure-control
 * valve caps the rail at 1.05 times the command.
 */
export const plover7: Rows = {
  'fuel-level-low': 'level:-- tankT:++',
  'fuel-overheated': 'tankT:++ retT:++ density:--',
  'fuel-waxed': 'filter:=+',
  'high-pressure-line-leak': 'leak:++ meter:++ offR:==',
  'high-pressure-pump-worn': 'pumpR:++ meter:++ injR:==',
  'injector-leakage-high': 'injR:++ oneOfFour:++ meter:++ pumpR:==',
  'injector-seat-leak': 'oneOfFour:++ injR:++ pumpR:==',
  'inlet-check-valve-leaking': 'primeT:=+ filter:== meter:==',
  'inlet-screen-plugged': 'screen:++ loadR:=- idleR:==',
  'lift-pump-open-circuit': 'lpA:-- supplyOn:-- lpV:==',
  'lift-pump-supply-drop': 'lpV:-- supplyOn:--',
  'lift-pump-weak': 'supplyOn:-- lpV:==',
  'main-filter-bypassing': 'filter:-- screen:++',
  'main-filter-plugged': 'filter:++ supplyLoad:++',
  'metering-actuator-open-circuit': 'ohm:++ idleR:++ control:++',
  'metering-valve-restricted': 'meter:++ loadR:=- screen:=-',
  'metering-valve-stuck-open': 'idleR:++ control:++ ohm:==',
  'no-fuel-fault': 'supplyOn:== filter:== meter:== injR:== loadR:==',
  'pickup-restricted': 'supplyOn:=- sig:==',
  'pressure-control-valve-leaking': 'control:++ meter:++ crankR:--',
  'rail-sensor-reads-high': 'sig:++ offR:++ ref:==',
  'rail-sensor-reads-low': 'sig:-- ref:==',
  'rail-sensor-reference-lost': 'ref:-- sig:--',
  'regulator-stuck-closed': 'supplyIdle:++ lpV:==',
  'regulator-stuck-open': 'supplyIdle:-- lpV:==',
  'return-line-restricted': 'ret:++',
  'supply-joint-leaking': 'leak:++ supplyLoad:--',
  'supply-line-restricted': 'supplyLoad:=- lpV:==',
  'tank-vent-blocked': 'vent:++ growth:++ filter:==',
  'water-in-fuel': 'water:++ filter:++',
};
