import { withExceptions } from './direction-rows';
import { tern13 } from './direction-tern-13';

/*
 * petrel-15: tern-13's layout, larger, with two pump heads. Its rows are tern-13's; where the sizes tip a cell the other way it
 * is listed, `==` taking back what tern-13 shows. Reasoned before it was computed.
 *
 * A sound rig by hand: 60 mL/s through plate and filter at full load, 36 of them the pump's, which could do 51; regulator at
 * 1 MPa; 8 mL/s of leakage 156 K warmer than the supply, into a larger tank that gains 1 K for every mL/s more. The
 * overshoots were taken over from tern-13 and disagreed where a smaller proportional gain leaves the integral more to do:
 * nine cells, in the rows below that list `over`.
 */
export const petrel15 = withExceptions(tern13, {
  'cooling-plate-restricted': 'over:=-',
  // 2.5 kPa less column in the return line, reckoned a hair below what the gauge shows. The larger mouth leaves less prime to hold.
  'fuel-level-low': 'ret:=- held:=-',
  // A larger part of what idle asks for is leakage.
  'fuel-overheated': 'meter:++ rearR:++',
  'gear-pump-worn': 'over:==',
  // Only the front head wears: half the effect at 0.3. At 0.9 the rail falls to 150 MPa, with the pump at its end and more
  // flow and heat than before. The rear head says which. Undershoot at 0.9 was reckoned just to stay.
  'high-pressure-pump-worn': 'cool:=+ screen:=+ tankT:=+ retT:++ enable:=+ under:=- over:==',
  // The larger tank stays cooler, so that more flow counts for more than thin fuel. Full load was
  // reckoned just to be held at 0.3.
  'injector-leakage-high': 'sAft:++ filter:=+ loadR:--',
  // 33 and 99 µm³ on top of 27: more than the pump can do at 0.9.
  'injector-seat-leak': 'sAft:=+ crankG:-- filter:== loadR:=- under:=- over:=-',
  'inlet-screen-plugged': 'sBef:=-',
  // The larger metering valve leaves the screen just enough.
  'main-filter-bypassing': 'loadR:== tankT:==',
  // A softer spring lets more of what the filter refuses show ahead of it.
  'main-filter-plugged': 'loadG:=+ held:++',
  // The filter was expected to show the thinner fuel of a smaller, hotter tank.
  'metering-actuator-open-circuit': 'filter:== rearR:++',
  'metering-valve-stuck-open': 'rearR:++',
  // Idle's pressure and the undershoot were reckoned just to stay, as idle gets its 24 mL/s through.
  'pickup-restricted': 'over:=-',
  'rail-sensor-reads-high': 'rearR:--',
  'rail-sensor-reads-low': 'rearR:++',
  // More flow than thin fuel at 0.3, reckoned on the threshold.
  'rail-sensor-reference-lost': 'filter:+- over:-- rearR:++',
  // A hotter return is diluted by more.
  'regulator-stuck-closed': 'retT:--',
  // The same open area is less of a larger pump.
  'regulator-stuck-open': 'suct:==',
  'relief-valve-leaking': 'crankR:=- filter:=+ over:--',
  // Opens at 208 MPa at 0.3 already, which full load commands: no pressure is missing, but the pump is at its end.
  'relief-valve-weak-spring': 'sBef:++ cool:++ filter:=+ screen:++ reliefL:++ tankT:++ retT:++',
  'return-line-restricted': 'cool:==',
  // The same holes in a larger pump: at 0.9 full load just loses its regulating, idle keeps a few mL/s of fuel.
  'suction-air-leak': 'sAft:== idleG:=- loadG:=- cool:== filter:== injR:== oneInj:== rearR:=+ retT:==',
  'supply-filter-plugged': 'over:=-',
  // Demand was reckoned, and is, on the threshold.
  'supply-line-restricted': 'meter:== over:=-',
  // 0.5 kPa at 0.3, a hair below what the gauge shows.
  'tank-vent-blocked': 'sBef:=+ vent:=+',
});
