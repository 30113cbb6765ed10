import type { Catalogue } from '../../catalogue';
import { type RandomStream, randomStream } from '../../random';
import type { Option } from '../answer';
import type { Figure } from '../figure';
import type { Line } from '../line';
import type { QuestionBody } from '../question';
import { shuffled } from '../shared/shuffled-options';
import { type Draws, drawsFrom } from './draws';
import { evaluateFormula, parseFormula } from './formula';
import { ANSWER, filled } from './placeholders';
import { targetsOn } from './targets-on';
import type { WrittenBody, WrittenQuestion } from './written-question';

type Of<Form extends WrittenBody['form']> = Extract<WrittenBody, { form: Form }>;
type Asked = Pick<QuestionBody, 'answer' | 'key' | 'guessFloor' | 'steps'> & {
  values?: Readonly<Record<string, string>>;
};

/**
 * The question that a seed makes of what somebody wrote: numbers drawn, options in an order of their own.
 *
 * @param written  Valid, and about what the catalogue has.
 * @throws RangeError where it is not.
 */
export function questionFromWritten(written: WrittenQuestion, seed: string, catalogue: Catalogue): QuestionBody {
  const { stem, explanation, picture, topics, difficulty, seconds, body } = written;
  const { values = {}, ...asked } = askedBy(body, seed, catalogue);
  const { [ANSWER]: _, ...beforehand } = values;
  return {
    stem: [markdown(filled(stem, beforehand))],
    ...(picture && { figure: pictureFigure(picture) }),
    ...asked,
    explanation: [markdown(filled(explanation, values))],
    topics,
    difficulty,
    features: {},
    seconds,
  };
}

function askedBy(body: WrittenBody, seed: string, catalogue: Catalogue): Asked {
  const stream = randomStream(seed, 'written order');
  switch (body.form) {
    case 'choice':
      return choice(body, stream);
    case 'several':
      return several(body, stream);
    case 'numbers':
      return numbers(body, drawsFrom(body.variables, seed));
    case 'order':
      return order(body, stream);
    case 'point':
      return point(body, catalogue);
    case 'spot':
      return spot(body, stream);
    case 'words':
      return words(body);
  }
}

function choice({ options, right, shuffle }: Of<'choice'>, stream: RandomStream): Asked {
  const shown = lettered(shuffle ? shuffled(stream, options) : options);
  return {
    answer: { form: 'choice', options: shown.map(optionOf) },
    key: { form: 'choice', right: lettersOf(shown, [right]), because: becauseOf(shown) },
    guessFloor: 1 / options.length,
    steps: 1,
  };
}

function several({ options, right, shuffle }: Of<'several'>, stream: RandomStream): Asked {
  const shown = lettered(shuffle ? shuffled(stream, options) : options);
  return {
    answer: { form: 'several', options: shown.map(optionOf) },
    key: { form: 'several', right: lettersOf(shown, right), because: becauseOf(shown) },
    // None ticked is no answer.
    guessFloor: 1 / (2 ** options.length - 1),
    steps: new Set(right).size,
  };
}

/** Lies in another order than the right one, so that handing it in untouched earns nothing whole. */
function order({ items }: Of<'order'>, stream: RandomStream): Asked {
  const [first, ...rest] = items;
  const mixed = shuffled(stream, items);
  const isRight = mixed.every(({ id }, index) => id === items[index]?.id);
  const shown = lettered(isRight && first ? [...rest, first] : mixed);
  return {
    answer: { form: 'order', items: shown.map(optionOf) },
    key: {
      form: 'order',
      order: lettersOf(
        shown,
        items.map(({ id }) => id),
      ),
    },
    guessFloor: 1 / items.reduce((product, _, index) => product * (index + 1), 1),
    steps: (items.length * (items.length - 1)) / 2,
  };
}

function numbers({ variables, formula, unit, tolerance, decimals }: Of<'numbers'>, draws: Draws): Asked {
  const parsed = parseFormula(
    formula,
    variables.map(({ name }) => name),
  );
  const value = 'formula' in parsed ? evaluateFormula(parsed.formula, draws) : undefined;
  if (value === undefined) throw new RangeError(`No number for ${JSON.stringify(draws)}`);
  const shown = value.toFixed(decimals);
  const asked = tolerance.kind === 'absolute' ? tolerance.amount : (Math.abs(value) * tolerance.amount) / 100;
  // Neither the key as it is shown nor the number before it was rounded may be wrong.
  const key = { value: Number(shown), tolerance: Math.max(asked, 10 ** -decimals / 2), slips: [] };
  return {
    answer: { form: 'numbers', parts: [{ id: 'a', line: markdown(''), units: unit ? [unit] : [] }] },
    key: { form: 'numbers', parts: { a: key } },
    guessFloor: 0,
    steps: 1,
    values: { ...Object.fromEntries(Object.entries(draws).map(([name, one]) => [name, String(one)])), [ANSWER]: shown },
  };
}

function point({ rig: rigId, right }: Of<'point'>, catalogue: Catalogue): Asked {
  const rig = catalogue.rigs.get(rigId);
  if (!rig) throw new RangeError(`Content has no rig ${rigId}`);
  const targets = targetsOn(rig, right, catalogue);
  const isRight = (target: { what: string; of: string }) =>
    right.some(({ what, of }) => what === target.what && of === target.of);
  const ids = targets.filter(isRight).map(({ id }) => id);
  if (ids.length === 0) throw new RangeError(`Nothing to point at on ${rigId}`);
  return {
    answer: { form: 'point', rig: rigId, targets },
    key: { form: 'point', right: ids },
    guessFloor: ids.length / targets.length,
    steps: 1,
  };
}

function spot({ picture, areas, right }: Of<'spot'>, stream: RandomStream): Asked {
  const shown = lettered(shuffled(stream, areas));
  const { id, width, height, alt } = picture;
  const shapes = shown.map(({ letter, item: { name, left, top, right: end, bottom } }) => ({
    id: letter,
    line: markdown(name),
    left,
    top,
    right: end,
    bottom,
  }));
  return {
    answer: { form: 'spot', picture: id, width, height, alt, shapes },
    key: { form: 'spot', right: lettersOf(shown, right) },
    guessFloor: new Set(right).size / areas.length,
    steps: 1,
  };
}

function words({ most, model, guidance, steps }: Of<'words'>): Asked {
  return { answer: { form: 'words', most }, key: { form: 'words', model, guidance }, guessFloor: 0, steps };
}

type Written = { id: string; text: string; because?: string | undefined };

/** Something with the letter under which it is shown; the letter tells nothing of the key. */
interface Lettered<T> {
  letter: string;
  item: T;
}

function lettered<T>(items: readonly T[]): Lettered<T>[] {
  return items.map((item, index) => ({ letter: String.fromCharCode(97 + index), item }));
}

function optionOf({ letter, item: { text } }: Lettered<Written>): Option {
  return { id: letter, line: markdown(text) };
}

function lettersOf(shown: readonly Lettered<{ id: string }>[], ids: readonly string[]): string[] {
  return ids.flatMap((id) => shown.find(({ item }) => item.id === id)?.letter ?? []);
}

function becauseOf(shown: readonly Lettered<Written>[]): Record<string, Line> {
  return Object.fromEntries(
    shown.flatMap(({ letter, item: { because } }) => (because ? [[letter, markdown(because)]] : [])),
  );
}

function markdown(text: string): Line {
  return { markdown: text };
}

function pictureFigure({ id, width, height, alt }: NonNullable<WrittenQuestion['picture']>): Figure {
  return { figure: 'picture', picture: id, width, height, alt };
}
