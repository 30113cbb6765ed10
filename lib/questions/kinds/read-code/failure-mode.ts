import type { Draw, DrawnBody } from '../../kind';
import type { Line } from '../../line';
import { type Choice, shuffled, shuffledOptions } from '../../shared/shuffled-options';
import type { ReadCodeRanges } from './ranges';
import { ELECTRICAL } from './words';

/** So many to choose from are easily taken for the one asked for, and one more is not. */
const ALIKE = 2;

/** What a failure mode's number says, or which number says it. */
export function failureMode({ ranges, catalogue, stream }: Draw<ReadCodeRanges>): DrawnBody {
  const modes = shuffled(stream('modes'), Object.keys(catalogue.codeNames.fmi));
  const asked = modes[0] ?? '';
  const alike = ranges.alikeModes.find((group) => group.includes(asked)) ?? [];
  const near = modes.filter((mode) => mode !== asked && alike.includes(mode)).slice(0, ALIKE);
  const others = [...near, ...modes.filter((mode) => !alike.includes(mode)).slice(0, 1)];
  const toNumber = stream('way').next() < 0.5;
  const line = (fmi: string): Line => (toNumber ? { say: 'mode-number', with: { fmi } } : named('mode-option', fmi));
  const choices: Choice[] = [
    { line: line(asked) },
    ...others.map((fmi) => ({ line: line(fmi), because: named('mode-is', fmi) })),
  ];
  const { options, right, because } = shuffledOptions(stream('order'), choices);
  return {
    stem: [toNumber ? named('mode-which-number', asked) : { say: 'mode-what-says', with: { fmi: asked } }],
    answer: { form: 'choice', options },
    key: { form: 'choice', right, because },
    explanation: [named('mode-is', asked), { say: 'mode-groups' }],
    topics: [ELECTRICAL],
    features: { lookUp: 1 },
    guessFloor: 1 / options.length,
    steps: 1,
    seconds: 25,
  };
}

function named(say: string, fmi: string): Line {
  return { say, with: { fmi, mode: { name: 'fmi', id: fmi } } };
}
