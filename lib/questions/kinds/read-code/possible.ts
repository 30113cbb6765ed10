import type { Draw, DrawnBody } from '../../kind';
import type { Line } from '../../line';
import { type Choice, shuffled, shuffledOptions } from '../../shared/shuffled-options';
import { drawSet, type NeverStores } from './draw-set';
import type { ReadCodeRanges } from './ranges';
import { causeName, codeLine, rigName } from './words';

/** Which of some causes are still possible when just these codes are stored. */
export function possible(draw: Draw<ReadCodeRanges>): DrawnBody | undefined {
  const { rig, ranges, stream } = draw;
  const set = drawSet(draw);
  if (!set) return undefined;
  const most = Math.min(ranges.mostPossible, set.possible.length);
  const count = 1 + Math.floor(stream('count').between(0, most));
  const still = shuffled(stream('possible'), set.possible).slice(0, count);
  const never = shuffled(stream('never'), set.never).slice(0, ranges.options - count);
  if (count + never.length < ranges.options) return undefined;
  const choices: Choice[] = [
    ...still.map(({ id }) => ({ line: option(id) })),
    ...never.map((one) => ({ line: option(one.storing.cause.id), because: neverLine(one) })),
  ];
  const { options, right, because } = shuffledOptions(stream('order'), choices);
  return {
    stem: [
      { say: 'possible-stem', with: { rig: rigName(rig.id), count: set.codes.length } },
      ...set.codes.map(codeLine),
      { say: 'possible-ask' },
    ],
    answer: { form: 'several', options },
    key: { form: 'several', right, because },
    explanation: [
      {
        say: 'possible-all',
        with: {
          rig: rigName(rig.id),
          count: set.codes.length,
          causes: { list: set.possible.map(({ id }) => causeName(id)) },
        },
      },
      ...never.map(neverLine),
      { say: 'possible-meaning' },
    ],
    topics: set.topics,
    features: { codes: set.codes.length, right: count },
    guessFloor: 1 / 2 ** options.length,
    steps: count,
    seconds: 90,
  };
}

function option(cause: string): Line {
  return { say: 'cause', with: { cause: causeName(cause) } };
}

/** Why a cause is out of it: what it does store. */
export function neverLine({ storing, spn }: NeverStores): Line {
  const stores = [...storing.spns].sort((one, other) => one - other).map(String);
  return {
    say: 'possible-never',
    with: {
      cause: causeName(storing.cause.id),
      parameter: { name: 'spn', id: String(spn) },
      spn: String(spn),
      count: stores.length,
      stores: { list: stores },
    },
  };
}
