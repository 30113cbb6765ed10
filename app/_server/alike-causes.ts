import type { Case, Truth } from '@/lib/cases/case';
import type { Catalogue } from '@/lib/catalogue';
import { beliefAtStart } from '@/lib/diagnosis/belief';
import { particlesOf } from '@/lib/diagnosis/particles';
import { byCause } from '@/lib/diagnosis/shares';
import { appliesTo } from '@/lib/faults/apply-cause';
import type { Cause } from '@/lib/faults/cause';
import type { Rig } from '@/lib/rig/rig';

/** How one case may be like another: its cause lies in the same area, or its work order could have been the same. */
export const likenesses = ['family', 'look-alike'] as const;
export type Likeness = (typeof likenesses)[number];

/** As many as a work order leaves likely. */
const LOOK_ALIKES = 4;

/** Other causes that a rig can have in the same area. */
export function familyOf(truth: Truth, rig: Rig, catalogue: Catalogue): string[] {
  const areas = areasOf(truth, catalogue);
  return others(truth, catalogue)
    .filter((cause) => areas.has(cause.area) && appliesTo(rig, cause))
    .map(({ id }) => id);
}

/** Causes in other areas that are most believed once the work order is read, the likeliest first. */
export function lookAlikesOf(theCase: Case, catalogue: Catalogue): string[] {
  const areas = areasOf(theCase.truth, catalogue);
  const elsewhere = new Set(
    others(theCase.truth, catalogue)
      .filter(({ area }) => !areas.has(area))
      .map(({ id }) => id),
  );
  const particles = particlesOf(theCase, catalogue);
  return [...byCause(particles, beliefAtStart(particles))]
    .filter(([id]) => elsewhere.has(id))
    .sort(([, a], [, b]) => b - a)
    .slice(0, LOOK_ALIKES)
    .map(([id]) => id);
}

function causesOf({ cause, also }: Truth): string[] {
  return also ? [cause, also.cause] : [cause];
}

function areasOf(truth: Truth, { causes }: Catalogue): Set<Cause['area']> {
  return new Set(causesOf(truth).flatMap((id) => causes.get(id)?.area ?? []));
}

/** What is wrong in neither; a vehicle with nothing wrong is like none. */
function others(truth: Truth, { causes }: Catalogue): Cause[] {
  return [...causes.values()].filter(({ id, element }) => element !== null && !causesOf(truth).includes(id));
}
