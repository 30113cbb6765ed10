import type { RandomStream } from '../../../random';
import type { LimitLine } from '../../../rig/rig';
import type { Value } from '../../line';
import { limitWords } from '../../shared/limit-words';
import { type Choice, shuffled } from '../../shared/shuffled-options';
import type { Taken } from './draw-taken';
import { lineWords } from './lines';
import type { Neighbour } from './neighbours';

/** Wrong lines beside the right one. */
const WRONG = 3;

/** The line that applies, or that there is none, with as many wrong ones. */
export function choicesOf(
  taken: Taken,
  neighbours: readonly Neighbour[],
  { offered, stream }: { offered: boolean; stream: RandomStream },
): Choice[] {
  const { check, line } = taken;
  const right: Choice = { line: line ? lineWords(check, line) : { say: 'noLine' } };
  const none: Choice[] =
    offered && line
      ? [{ line: { say: 'noLine' }, because: { say: 'hasLine', with: { limit: { line: limitWords(line) } } } }]
      : [];
  const wrong = [...otherConditions(taken), ...moved(taken), ...turned(taken), ...ofOthers(taken, neighbours)];
  return [right, ...none, ...shuffled(stream, wrong).slice(0, WRONG - none.length)];
}

function otherConditions({ check, condition, elsewhere }: Taken): Choice[] {
  return elsewhere.slice(0, 2).map(({ line, condition: other }) => ({
    line: lineWords(check, line),
    because: { say: 'forOtherCondition', with: { other: named(other), condition: named(condition) } },
  }));
}

/** Without a line of its own: the one of another condition, as if it were for this one. */
function moved({ check, condition, line, elsewhere: [first] }: Taken): Choice[] {
  if (line || !first) return [];
  return [
    {
      line: lineWords(check, { ...first.line, condition }),
      because: { say: 'isForOther', with: { other: named(first.condition), condition: named(condition) } },
    },
  ];
}

/** The right numbers with a least taken for a most, or one end of two taken for all. */
function turned({ check, line }: Taken): Choice[] {
  if (!line) return [];
  const { min, max, ...rest } = line;
  const ends = min === undefined ? { min: max } : { max: min };
  const way = min === undefined ? 'isMost' : max === undefined ? 'isLeast' : 'hasTwoEnds';
  const turnedLine = { ...rest, ...ends } as LimitLine;
  return [{ line: lineWords(check, turnedLine), because: { say: way, with: { limit: { line: limitWords(line) } } } }];
}

function ofOthers({ check, quantity }: Taken, neighbours: readonly Neighbour[]): Choice[] {
  return neighbours.map((one) => ({
    line: lineWords(one.check, one.line),
    because: {
      say: 'isOfOther',
      with: {
        other: { name: 'check-quantity', id: one.line.quantity, of: one.check.id },
        quantity: { name: 'check-quantity', id: quantity.id, of: check.id },
      },
    },
  }));
}

function named(id: string): Value {
  return { name: 'condition', id };
}
