import type { Rows } from './direction-rows';

/*
 * Which way each reading goes on plover-7, reasoned before it was computed, as in direction-tern-13.ts.
 *
 * A sound rig by hand: the supply pump moves 30 mL/s at 490 kPa ahead of the filter, idle and full load alike, for what the rail
 * leaves the regulator spills; filter 14 and screen 2 kPa. Rail at full load 13 of the pump's 19 mL/s, 3 of them
 * leakage 113 K warmer, 2 K in the tank for every mL/s; idle 0.7, cranking 0.5 of 1.4. Key-on 22 cm³ to fill, primed in 1.4 s.
 *
 * 71 of 2,160 cells disagreed when first run and were set to what was computed; most lie on a threshold, as do the snap's
 * overshoots. Four went the other way: the return of an engine that starves (waxed, pick-up restricted, pump worn at 0.9) was
 * reckoned hotter and is colder, as less pressure is throttled away; and a torn filter's loaded screen leaves the integral
 * more to give back.
 */
export const plover7: Rows = {
  // The bare mouth draws a little air and then more than half; it takes hot return with it.
  'fuel-level-low': 'air:++ filter:-- tankT:+- retT:++ ret:=- level:--',
  'fuel-overheated': 'filter:-- injR:++ oneFour:=+ pumpR:++ meter:=+ tankT:++ retT:++ density:--',
  // In the cold setting: 135 and 1,700 times at key-on, 1 and 550 at full load.
  'fuel-waxed':
    'spK:++ spI:=+ spL:=+ filter:=+ screen:=- loadR:=- meter:=+ lpA:++ cloud:++ held:++ enable:++ under:=+ over:=- tankT:=- retT:=- ret:=-',
  // 1.9 and 5.6 mL/s outside at full load, 0.9 and 2.8 at idle; the regulator spills so much less.
  'high-pressure-line-leak': 'screen:=+ crankR:=- meter:++ leak:++ enable:++ retT:=+ under:-+',
  'high-pressure-pump-worn': 'crankR:=- loadR:=- meter:++ pumpR:++ retT:+- enable:++ under:=+ over:=-',
  'injector-leakage-high':
    'filter:-- screen:++ loadR:=- meter:++ injR:++ oneFour:++ tankT:++ retT:++ enable:=+ under:-- over:=-',
  'injector-seat-leak': 'filter:-- screen:=+ loadR:=- meter:++ injR:++ oneFour:++ tankT:++ retT:++ enable:=+ under:=-',
  // 73 and all 320 mL run back; the pump lets nothing through backwards, so what is primed holds.
  'inlet-check-valve-leaking': 'primeT:++ primed:++ enable:++',
  'inlet-screen-plugged': 'screen:++ loadR:=- tankT:=- retT:=- under:=+ over:=- filter:=+',
  // A slow motor; nearly still, the pump is drawn through.
  'lift-pump-open-circuit':
    'spK:-- spI:-- spL:-- filter:-- screen:=- loadR:=- meter:++ lpA:-- primeT:=+ primed:++ held:=- enable:++ tankT:=- retT:++ ret:-- under:++ over:=-',
  'lift-pump-supply-drop':
    'spK:-- spI:-- spL:-- filter:-- meter:=+ lpV:-- lpA:=- primed:=+ held:=- enable:++ retT:++ ret:-- under:=+',
  // A worn pump near its dead head draws more.
  'lift-pump-weak':
    'spK:-- spI:-- spL:-- filter:-- meter:=+ lpA:++ primeT:=+ primed:=+ held:=- enable:++ retT:++ ret:-- under:=+ over:=- loadR:=- tankT:=-',
  'main-filter-bypassing': 'filter:-- screen:++ loadR:=- under:=+ over:=+ tankT:=- retT:=-',
  // 6.5 and 270 times: the pump climbs its line ahead of it.
  'main-filter-plugged':
    'spK:++ spI:++ spL:++ filter:++ screen:=- loadR:=- meter:=+ lpA:=+ held:=+ tankT:=- retT:++ enable:=+ under:=+ over:=- ret:=-',
  // The pressure-control valve holds 5 % and its override above the command.
  'metering-actuator-open-circuit':
    'crankR:++ idleR:++ loadR:=+ ctrl:++ meter:-- injR:++ ohm:++ tankT:=+ retT:=+ enable:-- under:-- over:++ filter:=- screen:=+ pumpR:++',
  'metering-valve-restricted': 'screen:=- loadR:=- meter:++ tankT:=- retT:=- enable:=+ under:++ over:=- filter:=+',
  'metering-valve-stuck-open': 'crankR:++ idleR:++ ctrl:++ meter:-- injR:++ enable:-- under:-- over:++ pumpR:=+',
  'no-fuel-fault': '',
  // 14 kPa ahead of the pump; at 0.9 no more than 4 mL/s come.
  'pickup-restricted':
    'spK:=- spI:=- spL:=- filter:=- screen:=- loadR:=- primeT:=+ primed:=+ enable:=+ tankT:=- retT:=- ret:=- under:=+ meter:=+',
  'pressure-control-valve-leaking':
    'filter:-- screen:++ crankR:-- loadR:=- ctrl:++ meter:++ tankT:++ retT:++ enable:++ under:-+ over:=- idleR:=- injR:=- oneFour:=- pumpR:=-',
  'rail-sensor-reads-high': 'meter:-- injR:-- oneFour:-- pumpR:-- offR:++ sig:++ retT:=- enable:-- under:=+',
  // The valve knows the command and not the sensor: it opens before the truth is as high as the controller wants.
  'rail-sensor-reads-low':
    'crankR:=- idleR:=- ctrl:++ meter:++ injR:=+ sig:-- enable:++ over:-- pumpR:=+ retT:=+ under:--',
  'rail-sensor-reference-lost':
    'screen:+- crankR:-- idleR:-- loadR:-- ctrl:++ meter:++ injR:+= tankT:+- retT:+- sig:-- ref:-- enable:++ under:++ over:-- filter:-= pumpR:+= ret:=+',
  'regulator-stuck-closed': 'spK:++ spI:++ spL:++ filter:-- meter:-- lpA:++ retT:++ under:--',
  // Pressure is what the open area leaves.
  'regulator-stuck-open':
    'spK:-- spI:-- spL:-- filter:++ meter:=+ primed:=+ held:-- enable:=+ retT:-- ret:=+ lpA:=- under:=+ over:=-',
  'return-line-restricted': 'spK:=+ spI:=+ spL:=+ filter:=- retT:=+ ret:++ meter:=- lpA:=+ under:=-',
  // 14 mL/s and more than 30 at rated pressure: at 0.9 the pump has nothing left for the regulator.
  'supply-joint-leaking':
    'spK:-- spI:-- spL:-- filter:-- meter:=+ leak:++ lpA:=- primed:=+ held:-- retT:++ ret:=- under:=+',
  'supply-line-restricted':
    'spK:=- spI:=- spL:=- filter:=- loadR:=- lpA:=+ primeT:=+ primed:=+ enable:=+ tankT:=- retT:=+ ret:=- under:=+',
  'tank-vent-blocked': 'vent:=+ ret:=- growth:=+',
  // The filter swells, 1.7 and 5 times.
  'water-in-fuel': 'spK:=+ spI:=+ spL:=+ filter:++ retT:=+ water:++',
};
