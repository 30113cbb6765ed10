import type { Case, Truth } from '@/lib/cases/case';
import type { Catalogue } from '@/lib/catalogue';
import { beliefAtStart } from '@/lib/diagnosis/belief';
import { particlesOf } from '@/lib/diagnosis/particles';
import { byCause } from '@/lib/diagnosis/shares';
import { appliesTo } from '@/lib/faults/apply-cause';
import type { Cause } from '@/lib/faults/cause';
import type { Rig } from '@/lib/rig/rig';

/** How one case may be like another: its cause lies in the same area or part, or its work order could have been the same. */
export const likenesses = ['family', 'look-alike'] as const;
export type Likeness = (typeof likenesses)[number];

/** As many as a work order leaves likely. */
const LOOK_ALIKES = 4;

/** Other causes that a rig can have in the same area or part. */
export function familyOf(truth: Truth, rig: Rig, catalogue: Catalogue): string[] {
  return others(truth, catalogue)
    .filter((cause) => isRelated(cause, truth, catalogue) && appliesTo(rig, cause))
    .map(({ id }) => id);
}

/** Causes elsewhere that are most believed once the work order is read, the likeliest first. */
export function lookAlikesOf(theCase: Case, catalogue: Catalogue): string[] {
  const { truth } = theCase;
  const unrelated = others(truth, catalogue).filter((cause) => !isRelated(cause, truth, catalogue));
  const elsewhere = new Set(unrelated.map(({ id }) => id));
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

function isRelated({ area, element }: Cause, truth: Truth, { causes }: Catalogue): boolean {
  return causesOf(truth).some((id) => {
    const wrong = causes.get(id);
    return wrong !== undefined && (wrong.area === area || wrong.element === element);
  });
}

/** What is wrong in neither; a vehicle with nothing wrong is like none. */
function others(truth: Truth, { causes }: Catalogue): Cause[] {
  return [...causes.values()].filter(({ id, element }) => element !== null && !causesOf(truth).includes(id));
}
