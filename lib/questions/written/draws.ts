import { type RandomStream, randomStream } from '../../random';
import { evaluateFormula, type Formula } from './formula';

/** A number drawn anew for each learner. */
export interface Variable {
  name: string;
  from: number;
  to: number;
  step: number;
}

/** Numbers drawn, by name. */
export type Draws = Readonly<Record<string, number>>;

/** So many that every corner of their ranges can be tried. */
export const MOST_VARIABLES = 12;

/** Draws that a formula is tried with before it is taken, besides every corner of the ranges. */
const TRIED = 200;

/** What a seed draws: each number from a stream of its own, so that one more variable moves no other. */
export function drawsFrom(variables: readonly Variable[], seed: string): Draws {
  return Object.fromEntries(
    variables.map((variable) => [variable.name, drawn(variable, randomStream(seed, `written ${variable.name}`))]),
  );
}

function drawn(variable: Variable, stream: RandomStream): number {
  return onGrid(variable, Math.floor(stream.next() * (stepsOf(variable) + 1)));
}

/** Steps from `from` to the last that does not pass `to`. */
function stepsOf({ from, to, step }: Variable): number {
  return Math.floor((to - from) / step + 1e-9);
}

/** Without the dust of binary fractions: 0.1 three times is 0.3. */
function onGrid({ from, step }: Variable, steps: number): number {
  return Number((from + steps * step).toPrecision(12));
}

/** The first draws for which a formula has no finite number, of all corners and some in between; undefined where it has. */
export function drawsWithout(formula: Formula, variables: readonly Variable[]): Draws | undefined {
  for (const draws of triedDraws(variables)) if (evaluateFormula(formula, draws) === undefined) return draws;
  return undefined;
}

function* triedDraws(variables: readonly Variable[]): Generator<Draws> {
  const ends = variables.map((variable) => [variable.from, onGrid(variable, stepsOf(variable))] as const);
  for (let corner = 0; corner < 2 ** variables.length; corner++)
    yield Object.fromEntries(variables.map(({ name }, index) => [name, ends[index]?.[(corner >> index) & 1] ?? 0]));
  for (let n = 0; n < TRIED; n++) yield drawsFrom(variables, `tried ${n}`);
}
