import { type CaseSpec, mayBeTwo } from '../cases/case-code';
import { DOUBLE_SHARE, independent, SEVERITY_DRAWS } from '../cases/case-from-seed';
import type { Cause } from '../faults/cause';
import type { Rig } from '../rig/rig';
import type { TroubleCode, WorkOrder } from '../symptoms/work-order';
import {
  chanceNoticed,
  likelihoodOfOrder,
  type Noticed,
  noticedAtWorst,
  noticedOver,
  noticedTogether,
} from './noticed';
import type { Slice, Strata } from './strata';

/** What is known of a case before anything is measured. */
export interface WorkOrderFacts {
  rig: Rig;
  workOrder: Pick<WorkOrder, 'complaint' | 'codes'>;
  spec: Pick<CaseSpec, 'hardest' | 'also'>;
}

/** One cause at one slice of its severities. */
export interface Single {
  strata: Strata;
  slice: Slice;
  /** Slices of the range that it stands for; 0 for the very end of it. */
  standsFor: number;
  /** Share of its cause's prior. A cause's shares sum to 1, less where the generator often draws another instead. */
  share: number;
  noticed: Noticed;
}

/** One particle: a cause or two, with the weight that prior and work order leave it. */
export interface Weighed {
  first: Single;
  second: Single | undefined;
  weight: number;
}

/** Severities that stand for the range of each of two causes. */
const STANDING = 3;

/**
 * Every cause at every slice of its own and, where two may be wrong, every two that the generator would draw together. The prior is how
 * common content says a cause is, over the severities that a driver would notice; times the chance of the work order.
 */
export function weigh({ rig, workOrder, spec }: WorkOrderFacts, singles: readonly (readonly Single[])[]): Weighed[] {
  const { codes } = rig;
  const causes = singles.flatMap(([one]) => one?.strata.cause ?? []);
  const two = mayBeTwo(spec);
  const alone = singles.flatMap((slices) => {
    const [one] = slices;
    if (!one) return [];
    const { cause } = one.strata;
    const drawn = cause.weight * (two ? shareAlone(cause, causes) : 1);
    return slices.map((first): Weighed => {
      const weight = drawn * first.share * likelihoodOfOrder(first.noticed, codes, workOrder);
      return { first, second: undefined, weight };
    });
  });
  return two ? [...alone, ...weighPairs(singles, codes, workOrder)] : alone;
}

/**
 * A cause's slices, each as likely as the generator draws it: only severities that a driver would notice, and the severest
 * of all where several draws were too mild.
 */
export function singlesOf(rig: Rig, strata: Strata): Single[] {
  const noticed = noticedOver(rig, strata);
  const { length } = noticed;
  const single = (index: number, share: number): Single => ({
    strata,
    slice: strata.slices[index] as Slice,
    standsFor: 1,
    noticed: noticed[index] as Noticed,
    share,
  });
  if (strata.cause.effects.length === 0) return noticed.map((_, index) => single(index, 1 / length));
  const chances = noticed.map(chanceNoticed);
  const total = chances.reduce((sum, chance) => sum + chance, 0);
  const tooMild = (1 - total / length) ** SEVERITY_DRAWS;
  const perChance = total > 0 ? (1 - tooMild) / total : 0;
  return [...chances.map((chance, index) => single(index, chance * perChance)), severest(rig, strata, tooMild)];
}

/** The end of the range. Where nobody would notice even that, the generator draws another cause. */
function severest(rig: Rig, strata: Strata, tooMild: number): Single {
  const slice = { lower: strata.nodes.length - 1, share: 0, severity: strata.cause.severity.max };
  const noticed = noticedAtWorst(rig, strata);
  return { strata, slice, standsFor: 0, noticed, share: tooMild * chanceNoticed(noticed) };
}

/** How often a cause is drawn without a second. */
function shareAlone(cause: Cause, causes: readonly Cause[]): number {
  return causes.some((other) => independent(cause, other)) ? 1 - DOUBLE_SHARE : 1;
}

function weighPairs(
  singles: readonly (readonly Single[])[],
  codes: readonly TroubleCode[],
  workOrder: WorkOrderFacts['workOrder'],
): Weighed[] {
  const standing = singles.map(standingFor);
  const causes = standing.map(([one]) => one?.strata.cause as Cause);
  const partners = causes.map((cause) =>
    causes.reduce((sum, other) => sum + (independent(cause, other) ? other.weight : 0), 0),
  );
  return standing.flatMap((ones, a) =>
    standing.slice(a + 1).flatMap((others, offset) => {
      const b = a + 1 + offset;
      const [first, second] = [causes[a] as Cause, causes[b] as Cause];
      if (!independent(first, second)) return [];
      const drawn = DOUBLE_SHARE * first.weight * second.weight * (1 / (partners[a] ?? 1) + 1 / (partners[b] ?? 1));
      return ones.flatMap((one) =>
        others.map((other) => {
          const chance = likelihoodOfOrder(noticedTogether(one.noticed, other.noticed), codes, workOrder);
          return { first: one, second: other, weight: drawn * one.share * other.share * chance };
        }),
      );
    }),
  );
}

/** A few slices, evenly over the range, in place of all. */
function standingFor(all: readonly Single[]): Single[] {
  const slices = all.filter(({ standsFor }) => standsFor > 0);
  const count = Math.min(STANDING, slices.length);
  return Array.from({ length: count }, (_, index) => {
    const single = slices[Math.floor(((index + 0.5) * slices.length) / count)] as Single;
    return { ...single, standsFor: slices.length / count, share: 1 / count };
  });
}
