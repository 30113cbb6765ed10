import { type AnswerSet, answerSets } from './answer-groups';
import { type Likelihood, likelihoodOf } from './rasch-likelihood';
import type { Responses } from './responses';
import { factorInPlace, inverseFactored, solveFactored } from './symmetric';

/** Why an item has no difficulty: without both right and wrong answers it would be infinite. */
export type NoFit = 'no-answers' | 'all-right' | 'all-wrong';

export type FittedItem =
  | { difficulty: number; standardError: number; people: number; why?: undefined }
  | { difficulty?: undefined; why: NoFit; people: number };

export interface RaschFit {
  why?: undefined;
  /** In the items' order; logits, 0 where the mean of the people stands. */
  items: FittedItem[];
  /** Standard deviation of the people's abilities, logits. */
  spread: number;
  /** Undefined where the spread was given. */
  spreadError: number | undefined;
  logLikelihood: number;
  /** Columns of the items that have a difficulty. */
  fitted: number[];
  /** Covariances of the difficulties of `fitted` and, last, of the spread: square, row by row. */
  covariance: Float64Array;
}

/** `no-spread`: people do not differ in anything that the items share. */
export type NoRaschFit = 'not-right-or-wrong' | 'too-few-items' | 'no-spread' | 'not-converged';

/**
 * Difficulties of items by the Rasch model, P(right) = 1 / (1 + exp(difficulty − ability)), from the likelihood of the answers
 * with normal abilities averaged out (marginal maximum likelihood). Who answered what may differ from person to person as
 * long as it does not hang on what they would have answered there; that it hung on earlier answers does no harm.
 *
 * Steps that suppose abilities known (an EM step by its gradient) lead into the neighbourhood, Newton's method to the top;
 * standard errors are from the curvature there. 500 people × 400 items take about a second where all answered the same, ten
 * where each left out others: not for a request to wait for.
 *
 * @param givenSpread  Standard deviation of the abilities, logits; fitted too where left out.
 * @source Bock & Aitkin 1981, Psychometrika 46; Lange 1995, JRSS B 57; Louis 1982, JRSS B 44 (all from memory).
 */
export function raschFit(responses: Responses, givenSpread?: number): RaschFit | { why: NoRaschFit } {
  if (!isRightOrWrong(responses)) return { why: 'not-right-or-wrong' };
  const counts = countsOf(responses);
  const fitted = counts.flatMap((count, item) => (reasonAgainst(count) ? [] : [item]));
  // Two items leave as many parameters as patterns to tell them by.
  if (fitted.length < (givenSpread === undefined ? 3 : 1)) return { why: 'too-few-items' };
  const right = Float64Array.from(fitted, (item) => counts[item]?.right ?? 0);
  const start = Float64Array.from([...fitted.map((item) => startOf(counts[item])), givenSpread ?? 1]);
  const top = climb(answerSets(responses, fitted), right, start, givenSpread === undefined);
  if ('why' in top) return top;
  const places = new Map(fitted.map((item, place) => [item, place]));
  const error = (place: number) => Math.sqrt(top.covariance[place * start.length + place] as number);
  return {
    items: counts.map((count, item): FittedItem => {
      const [why, place] = [reasonAgainst(count), places.get(item) ?? 0];
      if (why) return { why, people: count.people };
      return { difficulty: top.parameters[place] as number, standardError: error(place), people: count.people };
    }),
    spread: top.parameters[fitted.length] as number,
    spreadError: givenSpread === undefined ? error(fitted.length) : undefined,
    logLikelihood: top.log,
    fitted,
    covariance: top.covariance,
  };
}

function isRightOrWrong({ items, scores, maxima }: Responses): boolean {
  return scores.every((score, at) => !(score > 0) || score === maxima[at % items]);
}

interface Count {
  people: number;
  right: number;
}

function countsOf({ items, scores }: Responses): Count[] {
  const counts = Array.from({ length: items }, () => ({ people: 0, right: 0 }));
  for (const [at, score] of scores.entries()) {
    const count = counts[at % items];
    if (!count || Number.isNaN(score)) continue;
    count.people++;
    if (score > 0) count.right++;
  }
  return counts;
}

function reasonAgainst({ people, right }: Count): NoFit | undefined {
  if (people === 0) return 'no-answers';
  if (right === people) return 'all-right';
  return right === 0 ? 'all-wrong' : undefined;
}

function startOf({ people, right }: Count = { people: 0, right: 0 }): number {
  return Math.log((people - right + 0.5) / (right + 0.5));
}

const EM_STEPS = 8;
const STEPS = 80;
/** Newton's steps between two reckonings of the missing information, which is dear and changes little near the top. */
const STEPS_ALIKE = 4;
/** Logits. */
const CLOSE = 1e-9;
/** A spread below this says that the items share nothing. */
const LEAST_SPREAD = 0.02;

type Top = { parameters: Float64Array; log: number; covariance: Float64Array };

function climb(
  sets: readonly AnswerSet[],
  right: Float64Array,
  start: Float64Array,
  spreadIsFree: boolean,
): Top | { why: NoRaschFit } {
  const at = (parameters: Float64Array, withMissing: boolean) => {
    const found = likelihoodOf(sets, right, parameters, withMissing);
    if (!spreadIsFree) holdLast(found);
    return found;
  };
  let parameters = start;
  let missing: Float64Array | undefined;
  for (let step = 0; step < STEPS; step++) {
    const newton = step >= EM_STEPS;
    const anew = newton && (step - EM_STEPS) % STEPS_ALIKE === 0;
    const here = at(parameters, anew);
    if (anew) missing = here.missing;
    const move = (missing && upward(here, missing)) ?? upward(here);
    if (!move) return { why: 'not-converged' };
    const next = stepUp(parameters, move, here.log, (there) => at(there, false).log);
    if ((next.at(-1) as number) < LEAST_SPREAD) return { why: 'no-spread' };
    const moved = next.reduce(
      (most, value, place) => Math.max(most, Math.abs(value - (parameters[place] as number))),
      0,
    );
    parameters = next;
    if (newton && moved < CLOSE) return topAt(parameters, at(parameters, true));
  }
  return { why: 'not-converged' };
}

function topAt(parameters: Float64Array, here: Likelihood): Top | { why: NoRaschFit } {
  const size = parameters.length;
  const information = here.complete.map((value, place) => value - (here.missing[place] as number));
  if (!factorInPlace(information, size)) return { why: 'not-converged' };
  return { parameters, log: here.log, covariance: inverseFactored(information, size) };
}

/** A spread that is given neither moves nor blurs the rest. */
function holdLast({ gradient, complete, missing }: Likelihood): void {
  const size = gradient.length;
  const row = (size - 1) * size;
  gradient[size - 1] = 0;
  complete.fill(0, row, row + size - 1);
  complete[row + size - 1] = 1;
  missing.fill(0, row, row + size);
}

/** A step of Newton's where the missing information is given, of EM where it is not. */
function upward({ gradient, complete }: Likelihood, missing?: Float64Array): Float64Array | undefined {
  const curvature = missing ? complete.map((value, place) => value - (missing[place] as number)) : complete.slice();
  return factorInPlace(curvature, gradient.length) ? solveFactored(curvature, gradient) : undefined;
}

/** Along the move, half as far each time until the likelihood is no lower; the same place where it is lower everywhere. */
function stepUp(
  from: Float64Array,
  move: Float64Array,
  log: number,
  logAt: (there: Float64Array) => number,
): Float64Array {
  const rounding = 1e-12 * Math.abs(log);
  for (let length = 1; length > 1e-4; length /= 2) {
    const there = from.map((value, place) => value + length * (move[place] as number));
    if (logAt(there) >= log - rounding) return there;
  }
  return from;
}
