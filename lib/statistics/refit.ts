import { normalTail } from '../normal-tail';
import { type NoFit, type NoRaschFit, type RaschFit, raschFit } from './rasch-mml';
import type { Responses } from './responses';
import { FEW_PEOPLE } from './statistic';

/** What answers say of one item's difficulty, for somebody to accept or not. Logits, on the scale of the design. */
export type RefitProposal =
  | {
      design: number;
      refitted: number;
      /** Of `refitted`, the link to the design's scale included. */
      standardError: number;
      people: number;
      /** The item stands elsewhere among the others than designed, by more than chance (Holm 1979, 5 % over the whole refit). */
      moved: boolean;
      why?: undefined;
    }
  | { design: number; refitted?: undefined; why: NoFit | 'too-few-answers'; people: number };

export interface Refit {
  why?: undefined;
  /** In the items' order. */
  proposals: RefitProposal[];
  /** Items over which the two scales were linked: those with a refitted difficulty. */
  linked: number;
  /** Logits added to the fitted difficulties so that their mean is that of the design. */
  shift: number;
  /** Standard deviation of the people's abilities, logits. */
  spread: number;
}

export type NoRefit = { why: NoRaschFit | 'too-few-answers' };

/**
 * Difficulties refitted from answers, beside the designed ones.
 *
 * Answers tell how items stand to each other and to the people, not where 0 lies. The scales are linked by mean-equating:
 * over the items that are refitted, both have the same mean. So an item is said to have moved against the others; a design
 * that is too easy throughout by the same amount does not show.
 *
 * An item with too few answers is left out of the fit; where fewer than three are left nothing is proposed.
 *
 * @param design  Designed difficulty of each item, logits.
 * @param leastAnswers  People who must have answered an item.
 * @source Mean-equating: Kolen & Brennan, Test Equating, on linking item response scales (from memory).
 */
export function refit(responses: Responses, design: Float64Array, leastAnswers = FEW_PEOPLE): Refit | NoRefit {
  const answered = answersOf(responses);
  const enough = [...answered.keys()].filter((item) => (answered[item] as number) >= leastAnswers);
  if (enough.length < 3) return { why: 'too-few-answers' };
  const fit = raschFit(onlyItems(responses, enough));
  if (fit.why !== undefined) return fit;
  const shift = meanOf(fit.fitted, (place) => (design[enough[place] as number] as number) - difficultyOf(fit, place));
  const errors = linkedErrors(fit);
  const apart = fit.fitted.map((place, at) => {
    const moved = difficultyOf(fit, place) + shift - (design[enough[place] as number] as number);
    return Math.abs(moved) / (errors[at] as number);
  });
  const beyond = beyondChance(apart);
  const places = new Map(enough.map((item, place) => [item, place]));
  return {
    proposals: Array.from(design, (designed, item): RefitProposal => {
      const people = answered[item] ?? 0;
      const place = places.get(item);
      const found = place === undefined ? undefined : fit.items[place];
      if (place === undefined || !found) return { design: designed, why: 'too-few-answers', people };
      if (found.why !== undefined) return { design: designed, why: found.why, people };
      const at = fit.fitted.indexOf(place);
      return {
        design: designed,
        refitted: found.difficulty + shift,
        standardError: errors[at] as number,
        people,
        moved: beyond[at] ?? false,
      };
    }),
    linked: fit.fitted.length,
    shift,
    spread: fit.spread,
  };
}

function answersOf({ items, scores }: Responses): Int32Array {
  const answers = new Int32Array(items);
  for (const [at, score] of scores.entries())
    if (!Number.isNaN(score)) answers[at % items] = (answers[at % items] as number) + 1;
  return answers;
}

function onlyItems({ people, items, scores, maxima }: Responses, columns: readonly number[]): Responses {
  const kept = new Float64Array(people * columns.length);
  for (let person = 0, at = 0; person < people; person++)
    for (const column of columns) kept[at++] = scores[person * items + column] as number;
  return {
    people,
    items: columns.length,
    scores: kept,
    maxima: Float64Array.from(columns, (item) => maxima[item] ?? 1),
  };
}

function difficultyOf({ items }: RaschFit, place: number): number {
  return items[place]?.difficulty ?? Number.NaN;
}

/** Standard error of each difficulty less the mean of all: what is left once the scales are linked. */
function linkedErrors({ covariance, fitted }: RaschFit): Float64Array {
  const size = fitted.length + 1;
  const rows = Float64Array.from(fitted, (_, row) =>
    meanOf(fitted, (_item, column) => covariance[row * size + column] as number),
  );
  const ofMean = meanOf(fitted, (_, row) => rows[row] as number);
  return rows.map((withMean, row) => Math.sqrt((covariance[row * size + row] as number) - 2 * withMean + ofMean));
}

const ERROR_RATE = 0.05;

/** Holm's step-down test of all at once: among sound items one refit in twenty calls any of them moved. */
function beyondChance(apart: readonly number[]): boolean[] {
  const order = [...apart.keys()].sort((a, b) => (apart[b] as number) - (apart[a] as number));
  const failed = order.findIndex(
    (item, rank) => 2 * normalTail(apart[item] as number) > ERROR_RATE / (apart.length - rank),
  );
  const moved = new Set(failed < 0 ? order : order.slice(0, failed));
  return [...apart.keys()].map((item) => moved.has(item));
}

function meanOf(list: readonly number[], of: (entry: number, at: number) => number): number {
  return list.reduce((sum, entry, at) => sum + of(entry, at), 0) / list.length;
}
