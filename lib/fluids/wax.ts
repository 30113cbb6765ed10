import type { Kelvin, Metre } from '../units';

/** Where cold begins to stop a fuel. */
export interface WaxPoints {
  /** First crystals. */
  cloudPoint: Kelvin;
  /** The cold filter plugging point. */
  filterability: Kelvin;
}

/** Mesh of the plugging test. */
const TEST_MESH: Metre = 45e-6;
/**
 * Resistance of the plugging test's mesh at the plugging point, relative to clean. Assumed, from the test's own figures:
 * the bare mesh would pass the cold fuel some 40 to 60 times as fast as the 20 mL in 60 s at which the test gives up.
 */
const PLUGGED = 50;
/** A medium that lets next to nothing through: more wax changes nothing that anybody could see. */
const MOST = 1e4;
/** Wax that took less than this to plug the mesh would come all at once, which is more than anyone can measure. */
const LEAST_SPAN: Kelvin = 1;

/** What plugs the mesh at the plugging point before the bound is drawn, so that PLUGGED comes out behind it. */
const PLUGGING_EXCESS = (PLUGGED - 1) / (1 - (PLUGGED - 1) / (MOST - 1));

/**
 * Factor on a filter medium's resistance from wax crystals that lie on it. At and above the cloud point 1 exactly.
 *
 * 1 + e/(1 + e/9999), e = 49.24·u²·(45 µm/rating), u = (T_cloud − T)/(T_cloud − T_plugging), below the cloud point. It
 * leaves 1 without a kink, is 50 for a 45 µm medium at the cold filter plugging point and stays below 10 000. It is the
 * loading after a while of running: what a cold start finds is on its way there.
 *
 * Assumed: wax comes out slowly at first (u²), and a finer medium is blocked sooner in proportion to its pores. EN 116
 * only bears out the direction: a fuel may fail above its plugging point where a paper filter stands in the cold.
 *
 * @source Anchor: cold filter plugging point as EN 116:2015 has it (2 kPa, 60 s; the 20 mL and the 45 µm mesh from
 * memory). No published law of loading against temperature.
 */
export function waxLoading({ cloudPoint, filterability }: WaxPoints, temperature: Kelvin, rating: Metre): number {
  if (!(rating > 0)) throw new RangeError(`A medium's rating is ${rating} m: expected a size above zero`);
  const depth = Math.max(0, cloudPoint - temperature) / Math.max(LEAST_SPAN, cloudPoint - filterability);
  const excess = (PLUGGING_EXCESS * depth * depth * TEST_MESH) / rating;
  return 1 + excess / (1 + excess / (MOST - 1));
}
