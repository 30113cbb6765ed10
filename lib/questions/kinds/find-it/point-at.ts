import type { Rig } from '../../../rig/rig';
import type { DrawnBody } from '../../kind';
import { explainPlace } from './explain-place';
import type { Place } from './places';

const SECONDS = 25;

/** Point at what is named. */
export function pointAt(place: Place, places: readonly Place[], rig: Rig): Omit<DrawnBody, 'topics'> {
  const targets = places.map(({ what, of, seen }, index) => ({ id: `t${index + 1}`, what, of, line: seen }));
  const right = targets.filter(({ of }) => of === place.of).map(({ id }) => id);
  return {
    stem: [{ say: `point-at-${place.what}`, with: { it: { line: place.name } } }],
    figure: { figure: 'drawing', rig: rig.id, marked: [], names: false, ports: place.what === 'port' },
    answer: { form: 'point', rig: rig.id, targets },
    key: { form: 'point', right },
    explanation: explainPlace(place, rig),
    features: { naming: 0, lines: Number(place.what === 'node'), ports: Number(place.what === 'port'), mirror: 0 },
    guessFloor: Math.round((100 * right.length) / targets.length) / 100,
    steps: 1,
    seconds: SECONDS,
  };
}
