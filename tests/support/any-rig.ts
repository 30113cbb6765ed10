import fc from 'fast-check';
import { appliesTo } from '@/lib/faults/apply-cause';
import type { Rig } from '@/lib/rig/rig';
import type { Setting } from '@/lib/rig/setting';
import { ZERO_CELSIUS } from '@/lib/units';
import { catalogue } from './bench-rig';
import { brokenBy } from './broken-rig';

const share = fc.double({ min: 0, max: 1, noNaN: true });

/** Every weather, height, fuel, age and level that anybody may meet, well beyond what cases draw. */
export const anySetting: fc.Arbitrary<Setting> = fc.record({
  airTemperature: fc.double({ min: ZERO_CELSIUS - 40, max: ZERO_CELSIUS + 45, noNaN: true }),
  altitude: fc.double({ min: 0, max: 4000, noNaN: true }),
  fuel: fc.constantFrom(...catalogue.fuels.keys()),
  supplyFilterAge: share,
  mainFilterAge: share,
  tankLevel: share,
  hoursStanding: fc.double({ min: 0, max: 200, noNaN: true }),
  cylinder: fc.integer({ min: 1, max: 6 }),
});

/** Every rig with up to two things wrong with it, of any severity, together or not. */
export const anyBrokenRig: fc.Arbitrary<{ rig: Rig; faults: [string, number][] }> = fc
  .constantFrom(...catalogue.rigs.values())
  .chain((rig) => {
    const causes = [...catalogue.causes.values()].filter((cause) => appliesTo(rig, cause)).map(({ id }) => id);
    const fault = fc.tuple(fc.constantFrom(...causes), share);
    return fc
      .array(fault, { maxLength: 2 })
      .map((faults) => ({ rig: brokenBy(rig, ...faults), faults: faults as [string, number][] }));
  });
