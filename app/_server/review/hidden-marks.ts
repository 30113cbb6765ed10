import { findLastMarker } from '@/db/queries/manual-marks';
import { awaitsSecond } from '@/db/queries/second-marks';
import { database } from '../database';
import type { SittingPlace } from '../sittings/read-sitting';

/** A place of a sitting as somebody who reviews may see it. */
export interface ReviewedPlaceView extends SittingPlace {
  /** It has a first mark that nobody else sees before the second is given, or waits for either. */
  awaitsSecond: boolean;
}

/** Takes first marks away that are somebody else's and wait for a second, independent one. */
export async function hidingFirstMarks(
  places: readonly SittingPlace[],
  personId: string,
): Promise<ReviewedPlaceView[]> {
  return Promise.all(
    places.map(async (place) => {
      if (!place.mark || !(await awaitsSecond(database(), place))) return { ...place, awaitsSecond: false };
      const own = (await findLastMarker(database(), place)) === personId;
      return { ...place, awaitsSecond: true, mark: own ? place.mark : { ...place.mark, manual: null } };
    }),
  );
}
