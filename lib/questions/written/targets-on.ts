import type { Catalogue } from '../../catalogue';
import type { Rig } from '../../rig/rig';
import type { Target } from '../figure';
import { findIt } from '../kinds/find-it';
import { placesOf } from '../kinds/find-it/places';
import type { Line } from '../line';

/** Whose words say what an eye sees at a place of a drawing; a written question has none of its own. */
export const PLACES_KIND = findIt.id;

/** What can be pointed at where these are right: everything of their sorts, as the fuel meets it. */
export function targetsOn(
  rig: Rig,
  right: readonly Pick<Target, 'what'>[],
  catalogue: Pick<Catalogue, 'causes' | 'topics' | 'questions'>,
): (Target & { line: Line })[] {
  const screens = findIt.ranges.safeParse(catalogue.questions.get(PLACES_KIND)?.ranges).data?.screens ?? {};
  const sorts = (['element', 'node', 'port'] as const).filter((sort) => right.some(({ what }) => what === sort));
  return sorts
    .flatMap((sort) => placesOf(sort, rig, screens, catalogue))
    .map(({ what, of, seen }, index) => ({ id: `t${index + 1}`, what, of, line: seen }));
}
