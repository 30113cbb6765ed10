/*
 * Which way each reading goes on tern-13, reasoned before it was computed: `column:xy`, x at severity 0.3 and y at 0.9,
 * + rises, - falls, = stays. What is not listed stays at both: `==`. The columns are in direction-columns.ts.
 *
 * Orders of size on a sound rig, worked out by hand from its parameters. Full load: 50 mL/s through plate and main
 * filter, 20 of them the bleed's, 29 the high-pressure pump's; 54 spilled by the regulator; plate 13, filter 14, screen
 * 5 kPa; vacuum 7 ahead of and 13 behind the supply filter; 6 mL/s of leakage that is 135 K warmer than the supply, so
 * that the tank gains 2 K for every mL/s more. Idle: 21 mL/s, 1.5 of them the rail's, demand 0.095. Cranking:
 * 9 mL/s from the gear pump, all but 0.8 through the bleed. Key-on: 6 mL/s through the bleed, 43 into an empty line.
 * A snap: what an idle demand above the map has already drawn into the controller's integral is taken off the undershoot, and a
 * valve that stands further open answers faster.
 */
export const tern13: Record<string, string> = {
  // 6 and 220 times the drop. At 0.9 the plate passes 31 mL/s at most, of which the bleed takes a third: the rail starves,
  // everything behind the plate and in the suction line gets less, and no hot leakage warms the tank. Overshoot was
  // expected to fall: the gas in the filter housing, behind the plate, carries the snap over.
  'cooling-plate-restricted':
    'prime:=- primeT:=+ sBef:=- sAft:=- suct:=- crankG:=+ cool:++ filter:=- screen:=- loadR:=- meter:=+ tankT:=- retT:=- primed:++ held:=- enable:++ under:=+',
  // 1.7 kPa of head gone at 0.3. At 0.9 the pick-up draws air as soon as much flows, which takes room in the pumps. The
  // same heat goes into a third of the fuel: hot, thin, and easy on both filters. Prime at 0.9 was reckoned a hair below the threshold and is above. What
  // is primed holds: with the pump off no air is drawn.
  'fuel-level-low':
    'prime:=- primeT:=+ sBef:++ sAft:=+ suct:++ crankG:=- loadG:=- filter:-- air:=+ tankT:++ retT:++ level:-- primed:=+ enable:=+',
  // Thin fuel: filters cost less, every clearance leaks more, the worn-pump look of a gear pump that is slow and hot. More was
  // expected cranking and at idle (gear pressure, demand, time to enable, undershoot): the lines cool so little flow on its way.
  'fuel-overheated':
    'sAft:-- suct:-- crankG:=- cool:=+ filter:-- meter:=+ injR:++ oneInj:++ pumpR:++ tankT:++ retT:++ density:-- half:--',
  // In the cold setting. At 0.3 wax only lies below −1.4 °C, so before the engine warms the fuel: filters 8 and 50 times.
  // At 0.9 they stay shut in the running engine too, and an engine that starves does not warm its tank. The rail's
  // faster decay at 0.9 was overlooked: behind a shut filter less comes through the shut metering valve, and it is warmer.
  // Cranking at 0.3 the gear pump was expected to show it: it moves a hair less than the gauge tells.
  'fuel-waxed':
    'prime:=+ primeT:=+ sBef:=- sAft:=+ suct:=+ crankG:=+ idleG:=- loadG:=- cool:=- filter:=+ screen:=- air:=+ loadR:=- meter:=+ tankT:=- retT:=- lpA:=+ cloud:=+ primed:++ held:++ enable:++ under:=+ over:=- half:=-',
  // Slip does not care for speed: it eats a slow pump first. At 0.9 no regulating is left, the bleed passes less, and
  // undiluted leakage makes a hotter return. Overshoot was expected to rise with the pressure that
  // comes with speed: the integral waits for longer, far from the command, and has less to give back.
  'gear-pump-worn': 'sAft:=- crankG:-- idleG:=- loadG:=- cool:=- filter:=- meter:=+ retT:=+ under:=+ over:=-',
  // 4 and 13 mL/s outside at full load, 2 and 7 at idle: more flow through everything ahead of it. At 0.3 the integral has
  // met the leak before the pedal moves; at 0.9 it has not.
  'high-pressure-line-leak':
    'sBef:=+ sAft:++ suct:++ crankG:-- cool:++ filter:++ screen:++ crankR:=- meter:++ leak:++ enable:++ under:-+ over:=- half:--',
  // Leakage 2.5 and 16 times, displacement down to 0.64: at 0.9 the rail falls to half, and what leaks at half the
  // pressure carries less heat than before.
  'high-pressure-pump-worn':
    'suct:=+ crankG:=- cool:+= loadR:=- meter:++ pumpR:++ tankT:+= retT:+- enable:++ under:=+ over:=- half:--',
  // 5 and 15 times the clearance: hot thin leakage feeds on itself; at 0.3 the pump just keeps up. Warm fuel is easy on
  // the filter, more of it is not: at 0.9 the two cancel.
  'injector-leakage-high':
    'sBef:++ sAft:=+ suct:++ crankG:-- cool:++ filter:-= screen:++ loadR:=- meter:++ injR:++ oneInj:++ tankT:++ retT:++ enable:++ under:-- over:=- half:--',
  // As if one injector leaked for one and for four more: the pump just keeps up at full load.
  'injector-seat-leak':
    'sBef:=+ suct:=+ crankG:=- cool:++ filter:=- screen:++ meter:++ injR:++ oneInj:++ tankT:++ retT:++ enable:=+ half:--',
  // 80 mL and all 675 run back overnight; once fuel flows there is nothing to see.
  'inlet-check-valve-leaking': 'primeT:++ primed:++ enable:++',
  // 10 times the drop of 5 kPa at 0.3; at 0.9 it passes half of what full load takes. Overshoot was expected to
  // stay: the integral waits.
  'inlet-screen-plugged': 'sAft:=- cool:=- filter:=- screen:++ loadR:=- tankT:=- retT:=- enable:=+ under:=+ over:=-',
  // Part-way open is a slow motor: head goes with its square. At 0.9 it does not lift the fuel to its own height.
  'lift-pump-open-circuit': 'prime:-- primeT:=+ lpA:-- primed:++ held:-- enable:++',
  // 20 and 11 of 24 V.
  'lift-pump-supply-drop': 'prime:-- primeT:=+ lpV:-- lpA:-- primed:++ held:-- enable:++',
  // Head and flow 0.76 and 0.28; its current goes with its load relative to what it can: a hair more at 0.9 than
  // reckoned.
  'lift-pump-weak': 'prime:-- primeT:=+ lpA:=- primed:++ held:-- enable:++',
  // The filter costs less, the screen behind it gets what it lets through: 28 and 1,000 kPa, of 1,300: at 0.9
  // full load just falls short. Overshoot at 0.9 was reckoned on the threshold.
  'main-filter-bypassing': 'filter:-- screen:++ loadR:=- tankT:=- retT:=- under:=+ over:=+',
  // 5 and 128 times. Pressure builds ahead of it and is missing behind it; at 0.9 full load starves as behind a shut plate.
  'main-filter-plugged':
    'prime:=+ sBef:=- sAft:=- suct:=- crankG:++ cool:=- filter:++ screen:=- loadR:=- meter:=+ tankT:=- retT:=- held:=+ enable:=+ under:=+ over:=-',
  // Opens by itself: idle and cranking fill the rail to the relief valve, at 0.9 full load too. The rail fills before the line has.
  'metering-actuator-open-circuit':
    'sBef:=+ suct:++ crankG:-- cool:=+ filter:=- screen:=+ crankR:++ idleR:++ loadR:=+ meter:-- relief:++ reliefL:=+ injR:++ oneInj:++ pumpR:++ tankT:=+ retT:=+ ohm:++ enable:-- under:-- over:++ half:--',
  // 0.75 and 0.24 of the area: more command for the same; at 0.9 full load gets 13 of 29 mL/s. Overshoot was
  // expected to fall only at 0.9: the integral waits at 0.3 as well.
  'metering-valve-restricted':
    'sBef:=- sAft:=- cool:=- filter:=- screen:=- loadR:=- meter:++ tankT:=- retT:=- enable:=+ under:++ over:--',
  // 0.12 and 0.36 of the area stay open: 6 and 16 mL/s where idle wants 1.5. Full load wants more than that and is content.
  'metering-valve-stuck-open':
    'suct:=+ crankG:-- crankR:++ idleR:++ meter:-- relief:++ injR:++ oneInj:++ pumpR:++ enable:-- under:-- over:++ half:--',
  'no-fuel-fault': '',
  // 10 and 1,100 times 0.35 kPa: at 0.9 no more than 22 mL/s come up, at any vacuum. Idle takes 20.
  // Overshoot was expected to fall: the gas in the housings lasts for longer than a snap.
  'pickup-restricted':
    'primeT:=+ sBef:++ sAft:++ suct:++ idleG:=- loadG:=- cool:=- filter:=- screen:=- air:=+ loadR:=- tankT:=- retT:=- primed:=+ enable:=+ under:=+',
  // The truth is held down by as much as it adds; what is sensed looks right but at key-off.
  'rail-sensor-reads-high':
    'crankG:=+ cool:=- offR:++ meter:-- injR:-- oneInj:-- pumpR:-- tankT:=- retT:-- sig:++ enable:-- under:=+ half:++',
  // The truth is held up by 4 and 11 MPa; at key-off the screen shows no less than nothing, the meter does.
  // The later enabling at 0.3 was overrated: the controller asks for more all the way.
  'rail-sensor-reads-low': 'meter:=+ injR:++ oneInj:=+ pumpR:++ retT:=+ sig:-- enable:=+ half:--',
  // At 0.3 of it lost the truth is held far up: 86 MPa at idle, the relief valve's 210 at full load, which looks too low.
  // At 0.9 nobody believes the signal: no pressure is seen and a fixed demand starves full load.
  'rail-sensor-reference-lost':
    'sBef:+- sAft:+- crankG:-- loadG:=+ cool:+- filter:-- screen:+- crankR:=- idleR:=- loadR:-- meter:++ reliefL:+= injR:++ oneInj:++ pumpR:++ tankT:+- retT:+- sig:-- ref:-- enable:++ under:++ over:=- half:--',
  // 1.6 and 2.5 MPa. Cranking never gets there. Overshoot was reckoned on the threshold.
  'regulator-stuck-closed': 'sAft:=+ suct:++ idleG:++ loadG:++ cool:++ filter:=+ meter:-- retT:=- under:-- over:=-',
  // Pressure is what the open area leaves: 580 and 110 kPa at idle, 1,240 and 420 at full load, which at 0.9 is just
  // enough for the rail. In a snap the gas in the housings has to be pressed together first; overshoot was
  // expected to rise at 0.3, but the integral waits that long.
  'regulator-stuck-open':
    'sAft:=- suct:=- crankG:-- idleG:-- loadG:-- cool:=- filter:=- meter:++ retT:=+ under:++ over:=-',
  // 6 and 19 mL/s at full load, into the return: they warm the tank, and warm fuel is easy on the filter
  // until it is too much of it. Cranking at 0.3 was reckoned to end on the threshold.
  'relief-valve-leaking':
    'sBef:=+ sAft:=+ suct:++ crankG:-- cool:++ filter:-= screen:++ crankR:-- loadR:=- meter:++ relief:++ reliefL:++ tankT:++ retT:++ enable:++ under:-+ over:=- half:--',
  // Opens at 182 MPa, which nothing reaches, and at 125, which full load does.
  'relief-valve-weak-spring': 'sBef:=+ sAft:=+ cool:=+ screen:=+ loadR:=- reliefL:=+ tankT:=+ retT:=+',
  // 3 kPa where 1 was, and 270. That holds the bleed back, and with it prime pressure after key-off.
  'return-line-restricted': 'crankG:=+ cool:=- ret:=+ retT:=+ held:=+',
  // 23 and 65 mL/s of air at full load's vacuum take room in the gear pump; at 0.9 idle draws next to nothing else, lives on
  // its own return and gets hot. Slower priming was overrated at 0.3 (the air leaves ahead of the plate), full load's gear
  // pressure reckoned on the threshold.
  'suction-air-leak':
    'prime:-- primeT:=+ sAft:=- crankG:-- idleG:-- loadG:-- cool:=- filter:=- air:++ meter:=+ injR:=+ oneInj:=+ pumpR:=+ retT:=+ lpA:-- primed:++ held:-- enable:++ under:=+ over:=- half:=-',
  // 3 and 31 times 5 kPa: at 0.9 the vacuum has no more to give, and flow falls short everywhere but in cranking.
  // Overshoot as with the pick-up.
  'supply-filter-plugged':
    'prime:=- primeT:=+ sBef:=- sAft:++ suct:++ idleG:=- loadG:=- cool:=- filter:=- screen:=- air:=+ loadR:=- meter:=+ tankT:=- retT:=- primed:++ held:=- enable:++ under:=+',
  // 3 and some 100 times 1.5 kPa, ahead of the filter. Overshoot as with the pick-up.
  'supply-line-restricted':
    'prime:=- primeT:=+ sBef:++ sAft:++ suct:++ idleG:=- loadG:=- cool:=- filter:=- screen:=- air:=+ loadR:=- meter:=+ tankT:=- retT:=- primed:=+ held:=- enable:=+ under:=+',
  // 0.6 and 30 kPa after an hour of full load, less than 2 at high idle, where little is burned. The return ends in the same tank.
  'tank-vent-blocked': 'sBef:++ sAft:=+ suct:=+ vent:++ ret:=- growth:++',
  // The filter swells, 1.7 and 5 times.
  'water-in-fuel': 'sAft:++ suct:++ water:++ primed:=+ enable:=+',
};
