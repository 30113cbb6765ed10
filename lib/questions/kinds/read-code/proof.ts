import type { Draw, DrawnBody } from '../../kind';
import type { Line, Value } from '../../line';
import { type Choice, shuffled, shuffledOptions } from '../../shared/shuffled-options';
import { drawSet } from './draw-set';
import { neverLine } from './possible';
import type { ReadCodeRanges } from './ranges';
import { causeName, codeLine, rigName } from './words';

/** What codes prove and what they do not, with the reason: only one reason holds. */
export function proof(draw: Draw<ReadCodeRanges>): DrawnBody | undefined {
  const { rig, stream } = draw;
  const set = drawSet(draw);
  if (!set) return undefined;
  const [suspect, other, third = other] = shuffled(stream('possible'), set.possible);
  const [outside] = shuffled(stream('never'), set.never);
  if (!suspect || !other || !third || !outside) return undefined;
  const [a, b, c] = [causeName(suspect.id), causeName(other.id), causeName(third.id)];
  const d = causeName(outside.storing.cause.id);
  const both = { suspect: a, other: b };
  const choices: Choice[] = [
    { line: { say: 'proof-open', with: both } },
    { line: { say: 'proof-open', with: { suspect: a, other: d } }, because: neverLine(outside) },
    { line: { say: 'proof-proven', with: { suspect: a } }, because: { say: 'proof-not-alone', with: both } },
    ...excluded(c, a),
  ];
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
      { say: 'proof-meaning', with: both },
    ],
    topics: set.topics,
    features: { codes: set.codes.length },
    guessFloor: 1 / options.length,
    steps: 1,
    seconds: 75,
  };
}

/** That a cause is ruled out which stores the same. */
function excluded(cause: Value, suspect: Value): { line: Line; because: Line }[] {
  return [
    {
      line: { say: 'proof-excluded', with: { other: cause } },
      because: { say: 'proof-not-excluded', with: { other: cause, suspect } },
    },
  ];
}
