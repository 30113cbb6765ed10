import { independent } from '../cases/case-from-seed';
import type { Catalogue } from '../catalogue';
import { appliesTo } from '../faults/apply-cause';
import type { Cause } from '../faults/cause';
import type { Rig } from '../rig/rig';

/** What the generator is asked for. What is left out is left open. */
export interface Wishes {
  /** Any of these rigs. */
  rigs?: readonly string[];
  /** Nothing is wrong but these causes. */
  causes?: readonly string[];
  /** At least one of these topics is practised. */
  topics?: readonly string[];
  /** The hardest level, at which two things may be wrong. */
  hardest?: boolean;
  /** How many things are wrong. Two never are but at the hardest level. */
  faults?: 'single' | 'double';
  /** From and to, logits, both included. */
  difficulty?: readonly [min: number, max: number];
  /** The expert needs no more than these minutes. */
  minutes?: number;
}

/** `settled` is what nobody has to wish for: that the checks there are settle the case. */
export const wishNames = ['rigs', 'causes', 'topics', 'faults', 'settled', 'difficulty', 'minutes'] as const;
export type WishName = (typeof wishNames)[number];

/** A wish that no case can meet, with those of its names that cannot be met. */
export interface NeverMet {
  unmet: WishName;
  names: readonly string[];
}

/** The first wish that no seed could ever meet; undefined where each may be met. */
export function neverMet(wishes: Wishes, catalogue: Catalogue): NeverMet | undefined {
  return (
    unknown('rigs', wishes.rigs, catalogue.rigs) ??
    unknown('causes', wishes.causes, catalogue.causes) ??
    unknown('topics', wishes.topics, catalogue.topics) ??
    impossibleCause(wishes, catalogue) ??
    topicWithoutCause(wishes, catalogue) ??
    impossibleDouble(wishes, catalogue) ??
    impossibleRange(wishes)
  );
}

export function rigsWished({ rigs }: Wishes, catalogue: Pick<Catalogue, 'rigs'>): Rig[] {
  return [...catalogue.rigs.values()].filter(({ id }) => rigs?.includes(id) ?? true);
}

function unknown(unmet: WishName, ids: readonly string[] | undefined, known: ReadonlyMap<string, unknown>) {
  if (!ids) return undefined;
  const names = ids.filter((id) => !known.has(id));
  return names.length > 0 || ids.length === 0 ? { unmet, names } : undefined;
}

/** Causes wished for that a rig can have, in weather that it works in. */
function causesOn(rig: Rig, { causes }: Wishes, catalogue: Catalogue): Cause[] {
  return [...catalogue.causes.values()].filter(
    (cause) => (causes?.includes(cause.id) ?? true) && appliesTo(rig, cause) && inWeather(rig, cause),
  );
}

function inWeather({ settings: { airC } }: Rig, { airC: [coldest, warmest] = airC }: Cause): boolean {
  return coldest <= airC[1] && warmest >= airC[0];
}

function impossibleCause(wishes: Wishes, catalogue: Catalogue): NeverMet | undefined {
  const possible = rigsWished(wishes, catalogue).flatMap((rig) => causesOn(rig, wishes, catalogue));
  return possible.length === 0 ? { unmet: 'causes', names: wishes.causes ?? [] } : undefined;
}

/** A topic without areas is practised in every case. */
function topicWithoutCause(wishes: Wishes, catalogue: Catalogue): NeverMet | undefined {
  if (!wishes.topics) return undefined;
  const possible = rigsWished(wishes, catalogue).flatMap((rig) => causesOn(rig, wishes, catalogue));
  const met = wishes.topics.some((id) => {
    const covered = catalogue.topics.get(id)?.areas ?? [];
    return covered.length === 0 || possible.some(({ area }) => covered.includes(area));
  });
  return met ? undefined : { unmet: 'topics', names: wishes.topics };
}

function impossibleDouble(wishes: Wishes, catalogue: Catalogue): NeverMet | undefined {
  if (wishes.faults !== 'double') return undefined;
  const possible = rigsWished(wishes, catalogue).some((rig) => {
    const causes = causesOn(rig, wishes, catalogue);
    return causes.some((first) => causes.some((second) => independent(first, second)));
  });
  return wishes.hardest && possible ? undefined : { unmet: 'faults', names: ['double'] };
}

function impossibleRange({ difficulty, minutes }: Wishes): NeverMet | undefined {
  // Written so that what is no number is refused too.
  if (difficulty && !(difficulty[0] <= difficulty[1])) return { unmet: 'difficulty', names: difficulty.map(String) };
  if (minutes !== undefined && !(minutes > 0)) return { unmet: 'minutes', names: [String(minutes)] };
  return undefined;
}
