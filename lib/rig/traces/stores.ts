import { positivePart, positivePartSlope } from '../../hydraulics/positive-part';
import { gasStore, liquidStore, type Store, sumOfStores } from '../../hydraulics/store';
import type { Pascal } from '../../units';
import type { BoundRig } from '../build-network';
import { elementOfKind, type Rig } from '../rig';

/** What the nodes of a rig hold, by node index; most hold nothing worth counting. */
export type Stores = (Store | undefined)[];

/**
 * The rail full of fuel, and the air that filter housings and hoses keep at the priming node.
 *
 * @param missing  m³ that must run in before the low-pressure circuit is full.
 */
export function storesOf(rig: Rig, bound: BoundRig, missing: number): Stores {
  const { ambient } = bound.surroundings;
  const stores: Stores = bound.network.nodes.map(() => undefined);
  const rail = elementOfKind(rig, 'rail');
  const gas = gasStore({ gas: rig.traces.prime.gasCm3 * 1e-6, ambient, polytropic: 1 });
  stores[nodeOf(bound, rail.node)] = liquidStore({
    volume: rail.volumeCm3 * 1e-6,
    modulus: bound.fluids.high.modulus,
    ambient,
  });
  stores[nodeOf(bound, rig.primingNode)] = missing > 0 ? sumOfStores(gas, voidStore(missing, ambient)) : gas;
  return stores;
}

/** Pressure that an empty line takes to fill: little, as air leaves it far more easily than fuel comes in. Assumed. */
export const FILLING: Pascal = 3e3;
const CORNER: Pascal = 300;

/** Room that fills as soon as there is any pressure, and then is full. */
function voidStore(volume: number, ambient: Pascal): Store {
  const perPascal = volume / FILLING;
  return (pressure, result) => {
    const above = pressure - ambient;
    const beyond = above - FILLING;
    result.volume = perPascal * (positivePart(above, CORNER) - positivePart(beyond, CORNER));
    result.perPressure = perPascal * (positivePartSlope(above, CORNER) - positivePartSlope(beyond, CORNER));
  };
}

/** @throws RangeError when the rig has no such node. */
export function nodeOf({ nodeIndex }: BoundRig, id: string): number {
  const index = nodeIndex.get(id);
  if (index === undefined) throw new RangeError(`The rig has no node ${id}`);
  return index;
}
