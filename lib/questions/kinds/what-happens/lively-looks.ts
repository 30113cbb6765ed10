import type { Catalogue } from '../../../catalogue';
import { causesOn } from '../../shared/broken-day';
import type { RigDay } from '../../shared/rig-day';
import { effectsOf, looksOn, NO_READING } from './changes';

/** So many causes move a reading at their severest that it is worth asking about where it stays. */
const LIVELY = 3;

const known = new WeakMap<RigDay, ReadonlySet<number>>();

/** Looks of a day, by their index, that many causes move. */
export function livelyLooks(day: RigDay, catalogue: Catalogue): ReadonlySet<number> {
  const lively = known.get(day) ?? findLively(day, catalogue);
  known.set(day, lively);
  return lively;
}

function findLively(day: RigDay, catalogue: Catalogue): ReadonlySet<number> {
  const severest = causesOn(day, catalogue).map((cause) =>
    effectsOf(day, { cause, severity: cause.severity.max }, catalogue),
  );
  const moves = (index: number) =>
    severest.filter((effects) => {
      const effect = effects[index];
      return effect && effect !== NO_READING && (effect.direction === 'rises' || effect.direction === 'falls');
    });
  return new Set([...looksOn(day, catalogue).keys()].filter((index) => moves(index).length >= LIVELY));
}
