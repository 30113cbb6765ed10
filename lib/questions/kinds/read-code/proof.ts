import type { Draw, DrawnBody } from '../../kind';
import type { Value } from '../../line';
import { type Choice, shuffled, shuffledOptions } from '../../shared/shuffled-options';
import { drawSet, type NeverStores } from './draw-set';
import { neverLine } from './possible';
import type { ReadCodeRanges } from './ranges';
import { causeName, codeLine, rigName } from './words';

/** What codes prove, leave open and rule out, with the reason: of five only one holds. */
export function proof(draw: Draw<ReadCodeRanges>): DrawnBody | undefined {
  const { rig, stream } = draw;
  const set = drawSet(draw);
  if (!set) return undefined;
  const [suspect, other] = shuffled(stream('possible'), set.possible);
  const [first, second, third] = shuffled(stream('never'), set.never);
  if (!suspect || !other || !first || !second || !third) return undefined;
  const both = { suspect: causeName(suspect.id), other: causeName(other.id) };
  const choices: Choice[] =
    stream('holds').next() < 0.5
      ? [left(both), leftBy(both, first), proven(both), excluded(both), excluded(swapped(both))]
      : [ruledOut(first), leftBy(both, second), leftBy(both, third), proven(both), excluded(both)];
  const { options, right, because } = shuffledOptions(stream('order'), choices);
  return {
    stem: [
      { say: 'possible-stem', with: { rig: rigName(rig.id), count: set.codes.length } },
      ...set.codes.map(codeLine),
      { say: 'proof-ask' },
    ],
    answer: { form: 'choice', options },
    key: { form: 'choice', right, because },
    explanation: [
      {
        say: 'possible-all',
        with: {
          rig: rigName(rig.id),
          count: set.codes.length,
          causes: { list: set.possible.map(({ id }) => causeName(id)) },
        },
      },
      neverLine(first),
      { say: 'proof-meaning', with: { ...both } },
    ],
    topics: set.topics,
    features: { codes: set.codes.length },
    // One code alone proves nothing here, and whoever has seen a few of these knows it.
    guessFloor: 1 / (options.length - 1),
    steps: 1,
    seconds: 75,
  };
}

interface Both {
  suspect: Value;
  other: Value;
}

function swapped({ suspect, other }: Both): Both {
  return { suspect: other, other: suspect };
}

function left(both: Both): Choice {
  return { line: { say: 'proof-open', with: { ...both } } };
}

/** Left open for the wrong reason. */
function leftBy({ suspect }: Both, never: NeverStores): Choice {
  const other = causeName(never.storing.cause.id);
  return { line: { say: 'proof-open', with: { suspect, other } }, because: neverLine(never) };
}

function proven(both: Both): Choice {
  return {
    line: { say: 'proof-proven', with: { suspect: both.suspect } },
    because: { say: 'proof-not-alone', with: { ...both } },
  };
}

function ruledOut({ storing }: NeverStores): Choice {
  return { line: { say: 'proof-excluded', with: { other: causeName(storing.cause.id) } } };
}

/** Ruled out, though it can store just that. */
function excluded(both: Both): Choice {
  return {
    line: { say: 'proof-excluded', with: { other: both.other } },
    because: { say: 'proof-not-excluded', with: { ...both } },
  };
}
