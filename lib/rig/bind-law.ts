import type { FuelState } from '../fluids/fuel-state';
import { airLeakLaw } from '../hydraulics/elements/air-leak';
import { checkValveLaw } from '../hydraulics/elements/check-valve';
import { clearanceLeakLaw, injectorReturnLaw } from '../hydraulics/elements/clearance-leak';
import type { Law } from '../hydraulics/elements/element';
import { filterLaw } from '../hydraulics/elements/filter';
import { gearPumpLaw } from '../hydraulics/elements/gear-pump';
import { highPressurePumpLaw } from '../hydraulics/elements/high-pressure-pump';
import { injectorsLaw } from '../hydraulics/elements/injectors';
import { liftPumpLaw } from '../hydraulics/elements/lift-pump';
import { meteringValveLaw } from '../hydraulics/elements/metering-valve';
import { orificeLaw } from '../hydraulics/elements/orifice';
import { outsideLeakLaw } from '../hydraulics/elements/outside-leak';
import { pipeLaw } from '../hydraulics/elements/pipe';
import { pressureRegulatorLaw } from '../hydraulics/elements/pressure-regulator';
import { tankLaw } from '../hydraulics/elements/tank';
import type { RigElement } from './element';
import type { Surroundings } from './surroundings';

const MM2 = 1e-6;
const CM3 = 1e-6;
const UM3 = 1e-18;
const LITRE = 1e-3;
const MM = 1e-3;
const UM = 1e-6;
const KPA = 1e3;
const MPA = 1e6;
const LITRE_PER_MINUTE = 1e-3 / 60;

/** The corner of the low-pressure regulator and of the relief valve, as a share of the opening pressure. */
const REGULATOR_CORNER = 0.004;

/**
 * An element's content parameters, turned to SI and bound to its law. Undefined for elements that pass no flow of
 * their own (rail, sensor). The one place that knows every kind of element.
 *
 * @param fuel  As it is where the element stands.
 */
export function bindLaw(element: RigElement, fuel: FuelState, at: Surroundings): Law | undefined {
  switch (element.kind) {
    case 'tank':
      return tankLaw(
        {
          ventArea: element.ventAreaMm2 * MM2,
          flowCoefficient: element.flowCoefficient,
          level: element.depthM * element.levelShare * at.tankLevel,
          ullage: element.volumeL * LITRE * (1 - element.levelShare * at.tankLevel),
          run: at.minutes * 60,
        },
        fuel.density,
        at.airDensity,
      );
    case 'pipe':
      return pipeLaw(
        {
          bore: element.boreMm * MM,
          length: element.lengthM,
          roughness: element.roughnessUm * UM,
          minorLoss: element.minorLoss,
          rise: element.riseM,
        },
        fuel,
      );
    case 'filter':
      return filterLaw(
        {
          resistance: element.mediumResistance * element.plugging,
          housingArea: element.housingAreaMm2 * MM2,
          flowCoefficient: element.flowCoefficient,
        },
        fuel,
      );
    case 'orifice':
    case 'cooling-plate':
      return orificeLaw({ area: element.areaMm2 * MM2, flowCoefficient: element.flowCoefficient }, fuel.density);
    case 'check-valve':
      return checkValveLaw(
        {
          crack: element.crackKpa * KPA,
          area: element.areaMm2 * MM2,
          flowCoefficient: element.flowCoefficient,
          seatLeakArea: element.seatLeakMm2 * MM2,
        },
        fuel,
      );
    case 'lift-pump':
      return liftPumpLaw({
        freeFlow: element.freeFlowLmin * element.condition * LITRE_PER_MINUTE,
        deadHead: Math.max(1, element.deadHeadKpa * element.condition * KPA),
        speed: (at.liftPumpVolts * element.supplyShare * element.circuitShare) / element.ratedVolts,
        vapourPressure: fuel.vapourPressure,
      });
    case 'gear-pump':
      return gearPumpLaw(
        {
          displacement: element.displacementCm3 * CM3,
          speed: at.engineSpeed * element.speedRatio,
          slipCoefficient: element.slipCoefficient,
          fillPressure: element.fillKpa * KPA,
        },
        fuel,
      );
    case 'pressure-regulator':
      return pressureRegulatorLaw(
        {
          set: element.setKpa * KPA,
          override: (element.overrideKpaPerLmin * KPA) / LITRE_PER_MINUTE,
          openArea: element.stuckOpenMm2 * MM2,
          flowCoefficient: 0.65,
          corner: element.setKpa * KPA * REGULATOR_CORNER,
        },
        fuel,
      );
    case 'metering-valve':
      return meteringValveLaw({ ...element, area: element.areaMm2 * MM2 }, fuel);
    case 'high-pressure-pump':
      return highPressurePumpLaw({
        capacity: element.displacementCm3 * CM3 * element.capacityFraction * element.speedRatio * at.engineSpeed,
        fillPressure: element.fillKpa * KPA,
        vapourPressure: fuel.vapourPressure,
      });
    case 'clearance-leak':
      return clearanceLeakLaw({ clearance: element.clearanceUm3 * UM3 }, fuel);
    case 'injector-return':
      return injectorReturnLaw(
        {
          clearance: (element.clearanceUm3 + element.oneClearanceUm3) * UM3,
          controlFlow: element.controlMm3PerShot * MM ** 3 * at.engineSpeed * at.shotsPerRevolution,
          reference: element.referenceMpa * MPA,
        },
        fuel,
      );
    case 'injectors':
      return injectorsLaw({
        commandedFlow: at.injected * at.engineSpeed * at.shotsPerRevolution,
        commandedPressure: at.railCommand,
        durationHeadroom: element.durationHeadroom,
        ambient: at.ambient,
        sensor: at.sensor,
        needleOpening: element.needleOpeningMpa * MPA,
        enable: at.injectionEnable,
      });
    case 'relief-valve':
      return pressureRegulatorLaw(
        {
          set: element.openMpa * MPA,
          override: (element.overrideMpaPerLmin * MPA) / LITRE_PER_MINUTE,
          openArea: element.seatLeakMm2 * MM2,
          flowCoefficient: element.flowCoefficient,
          corner: element.openMpa * MPA * REGULATOR_CORNER,
        },
        fuel,
      );
    case 'pressure-control-valve':
      return pressureRegulatorLaw(
        {
          set: Math.max(element.springMpa * MPA, at.railCommand * element.holdShare),
          override: (element.overrideMpaPerLmin * MPA) / LITRE_PER_MINUTE,
          openArea: element.seatLeakMm2 * MM2,
          flowCoefficient: element.flowCoefficient,
          corner: element.springMpa * MPA * REGULATOR_CORNER,
        },
        fuel,
      );
    case 'outside-leak':
      return outsideLeakLaw({ area: element.areaMm2 * MM2, flowCoefficient: element.flowCoefficient }, fuel.density);
    case 'air-leak':
      return airLeakLaw({
        // Where nothing pumps, air only takes the place of fuel that runs back: see standing.ts.
        area: at.engineSpeed > 0 || at.liftPumpVolts > 0 ? element.areaMm2 * MM2 : 0,
        flowCoefficient: element.flowCoefficient,
        ambient: at.ambient,
        airDensity: at.airDensity,
      });
    case 'rail':
    case 'rail-sensor':
      return undefined;
  }
}
