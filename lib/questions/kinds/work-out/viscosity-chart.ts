import { z } from 'zod';
import type { Fuel } from '../../../fluids/fuel';
import { fitWalther, kinematicViscosity, walther } from '../../../fluids/viscosity';
import { ZERO_CELSIUS } from '../../../units';
import type { DrawnBody } from '../../kind';
import { type Choice, shuffledOptions } from '../../shared/shuffled-options';
import { defineExercise } from './exercise';
import { amount, bare, only, rounded, say } from './sum';

const topics = ['fuel-quality', 'filtration'];

const ranges = z.strictObject({
  temperaturesC: z.array(z.number()).min(1),
  /** Two options differ by so much of the lesser at least, so that no reckoning falls between them. */
  leastApart: z.number().positive(),
});

const [LOW_C, HIGH_C] = [40, 100];

/** Too much to reckon by hand to the digit: which of four figures is nearest. */
export const viscosityChart = defineExercise({
  id: 'viscosityChart',
  topics,
  ranges,
  draw({ ranges, catalogue, stream }) {
    const fuel = stream('fuel').pick([...catalogue.fuels.values()]);
    const celsius = stream('temperature').pick(ranges.temperaturesC);
    // Below its cloud point the chart does not hold.
    if (celsius <= fuel.cloudPointC) return undefined;
    const right = at(fuel, celsius);
    const wrong = wrongOnes(fuel, celsius);
    if (!isApart([right, ...wrong.map(({ value }) => value)], ranges.leastApart)) return undefined;
    const choices: Choice[] = [
      { line: option(right) },
      ...wrong.map(({ value, why }) => ({ line: option(value), because: say(why) })),
    ];
    const { options, right: key, because } = shuffledOptions(stream('order'), choices);
    const values = worded(fuel, celsius, right);
    return {
      stem: [
        say('viscosityChart-stem', only(values, 'fuel', 'viscosity40', 'viscosity100', 'celsius')),
        say('viscosityChart-chart'),
      ],
      answer: { form: 'choice', options },
      key: { form: 'choice', right: key, because },
      explanation: [
        say('viscosityChart-points', values),
        say('viscosityChart-line', values),
        say('viscosityChart-meaning', values),
      ],
      topics,
      features: { parts: 1, chart: 1 },
      guessFloor: 1 / choices.length,
      steps: 1,
      seconds: 90,
    } satisfies DrawnBody;
  },
});

function at({ viscosity40, viscosity100 }: Pick<Fuel, 'viscosity40' | 'viscosity100'>, celsius: number): number {
  return kinematicViscosity(walther(viscosity40 * 1e-6, viscosity100 * 1e-6), celsius + ZERO_CELSIUS) * 1e6;
}

function wrongOnes(fuel: Fuel, celsius: number): { value: number; why: string }[] {
  const { viscosity40, viscosity100 } = fuel;
  const share = (celsius - LOW_C) / (HIGH_C - LOW_C);
  const straight = viscosity40 + share * (viscosity100 - viscosity40);
  const mirrored = at(fuel, 2 * LOW_C - celsius);
  return [
    { value: straight, why: 'viscosityChart-straight' },
    { value: mirrored, why: 'viscosityChart-mirrored' },
    celsius < LOW_C
      ? { value: (viscosity40 * LOW_C) / celsius, why: 'viscosityChart-proportion' }
      : { value: viscosity40, why: 'viscosityChart-unchanged' },
  ];
}

function isApart(values: readonly number[], least: number): boolean {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted.every((value, index) => {
    const next = sorted[index + 1];
    return value > 0.5 && Number.isFinite(value) && (next === undefined || next > value * (1 + least));
  });
}

function option(value: number) {
  return say('viscosityChart-option', { value: amount(rounded(value, 1), 'mm²/s', 1) });
}

function worded({ id, viscosity40, viscosity100 }: Fuel, celsius: number, right: number) {
  const { a, b } = fitWalther(
    { temperature: LOW_C + ZERO_CELSIUS, viscosity: viscosity40 * 1e-6 },
    { temperature: HIGH_C + ZERO_CELSIUS, viscosity: viscosity100 * 1e-6 },
  );
  return {
    fuel: { name: 'fuel', id },
    viscosity40: amount(viscosity40, 'mm²/s', 2),
    viscosity100: amount(viscosity100, 'mm²/s', 2),
    celsius: amount(celsius, '°C', 0),
    kelvin: bare(celsius + ZERO_CELSIUS, 2),
    a: bare(a, 4),
    b: bare(b, 4),
    right: amount(right, 'mm²/s', 1),
    colder: celsius < LOW_C ? 'yes' : 'no',
    ratio: bare(celsius < LOW_C ? right / viscosity40 : viscosity40 / right, 1),
  } as const;
}
