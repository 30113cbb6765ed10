import type { Ground } from './ground';
import type { Strata } from './strata';
import type { Single, Weighed } from './weigh';

/** Causes that carry this share once the work order is read are solved at more severities. */
const REFINED_FROM = 3e-3;
/** A particle that is less likely than this share of the likeliest is not. */
const LIKELY_FROM = 1e-4;

/** Solves the causes that the work order leaves likely at twice as many severities. */
export function refineBelieved(ground: Ground, weighed: readonly Weighed[]): (readonly Single[])[] {
  const shares = new Map<Strata, number>();
  let total = 0;
  for (const { first, second, weight } of weighed) {
    total += weight;
    for (const { strata } of second ? [first, second] : [first]) shares.set(strata, (shares.get(strata) ?? 0) + weight);
  }
  return ground.singles.map((slices) => {
    const strata = slices[0]?.strata;
    const likely = strata && (shares.get(strata) ?? 0) > REFINED_FROM * total;
    return likely ? ground.finer(strata) : slices;
  });
}

/** Particles that are likely and, of each cause, the one that fits the work order best, so that it can come back. */
export function keepBelieved(weighed: readonly Weighed[]): Weighed[] {
  const best = new Map<Strata, Weighed>();
  for (const one of weighed) {
    if (one.second) continue;
    const known = best.get(one.first.strata);
    if (!known || one.weight > known.weight) best.set(one.first.strata, one);
  }
  const stays = new Set(best.values());
  const likely = isLikely(weighed);
  return weighed.filter((one) => likely(one) || (stays.has(one) && one.weight > 0));
}

export function isLikely(weighed: readonly Weighed[]): (one: Weighed) => boolean {
  const likeliest = weighed.reduce((most, { weight }) => Math.max(most, weight), 0);
  return ({ weight }) => weight > LIKELY_FROM * likeliest;
}
