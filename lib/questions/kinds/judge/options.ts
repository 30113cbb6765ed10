import type { Comparison } from '../../../checks/verdict';
import type { Line } from '../../line';
import { exact } from '../../shared/exact';
import type { Choice } from '../../shared/shuffled-options';
import type { Judgement } from './judgement';
import { printedOf } from './printed';

/** What can be said of a reading; `at-stop` only where the pointer stands there. */
type Saying = Comparison | 'at-stop';

/** Every verdict with its reason, whatever the key is. */
export function choicesOf(judgement: Judgement): Choice[] {
  const right = rightSaying(judgement);
  const sayings: readonly Saying[] = ['within', 'below', 'above', 'too-close'];
  const stopped: readonly Saying[] = judgement.shown.kind === 'off-scale' ? ['at-stop'] : [];
  return [...sayings, ...stopped].map((saying) => ({
    line: sayingLine(saying, judgement),
    ...(saying !== right && { because: because(saying, judgement) }),
  }));
}

function rightSaying({ shown, comparison }: Judgement): Saying {
  return shown.kind === 'off-scale' && comparison === 'too-close' ? 'at-stop' : comparison;
}

/** A limit with one end alone is also offered the wrong way round: a most taken for a least. */
function sayingLine(saying: Saying, { line: { min, max, unit } }: Judgement): Line {
  switch (saying) {
    case 'within':
      return { say: 'pass' };
    case 'below':
      return { say: 'failBelow', with: { limit: exact(min ?? max ?? 0, unit) } };
    case 'above':
      return { say: 'failAbove', with: { limit: exact(max ?? min ?? 0, unit) } };
    case 'too-close':
      return { say: 'tooClose' };
    case 'at-stop':
      return { say: 'atStop' };
  }
}

function because(saying: Saying, judgement: Judgement): Line {
  const { comparison, shown, gauge, line } = judgement;
  const { distance, guard } = printedOf(judgement);
  const numbers = { distance, guard };
  const off = shown.kind === 'off-scale';
  if (off && comparison === 'too-close')
    return { say: 'notKnownBeyond', with: { end: exact(judgement.value, gauge.unit) } };
  if (saying === 'at-stop') return { say: 'settledAtStop', with: { end: exact(judgement.value, gauge.unit) } };
  if (comparison === 'too-close') return { say: 'mayLieBeyond', with: numbers };
  if (saying === 'below' && line.min === undefined)
    return { say: 'isMost', with: { limit: exact(line.max ?? 0, line.unit) } };
  if (saying === 'above' && line.max === undefined)
    return { say: 'isLeast', with: { limit: exact(line.min ?? 0, line.unit) } };
  if (off) return { say: 'settledAtStop', with: { end: exact(judgement.value, gauge.unit) } };
  return {
    say: saying === 'too-close' ? 'farEnough' : `lies${comparison[0]?.toUpperCase()}${comparison.slice(1)}`,
    with: numbers,
  };
}
