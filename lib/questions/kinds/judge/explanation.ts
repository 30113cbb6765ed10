import { verdictOf } from '../../../checks/verdict';
import type { Line } from '../../line';
import { exact, exactNumber } from '../../shared/exact';
import type { Judgement } from './judgement';
import { type Printed, printedOf } from './printed';

/** Error, uncertainty, guard band and comparison, each with this reading's numbers. */
export function explanationOf(judgement: Judgement): Line[] {
  const { accuracy, readable } = judgement;
  const printed = printedOf(judgement);
  return [
    errorLine(judgement),
    {
      say: 'uncertainty',
      with: {
        accuracy: exactNumber(accuracy),
        readable: exactNumber(readable),
        uncertainty: printed.uncertainty,
      },
    },
    { say: 'guard', with: { uncertainty: printed.uncertainty, guard: printed.guard } },
    ...converted(judgement, printed),
    comparisonLine(judgement, printed),
  ];
}

function errorLine({ gauge: { accuracy: by, range, unit }, accuracy, readable }: Judgement): Line {
  const span = range.max - range.min;
  return {
    say: accuracy === 0 ? 'errorOfDigit' : by.kind === 'absolute' ? 'errorFixed' : 'errorOfSpan',
    with: {
      percent: exactNumber((100 * accuracy) / span),
      span: exact(span, unit),
      accuracy: exact(accuracy, unit),
      readable: exact(readable, unit),
    },
  };
}

function converted({ gauge, line, end }: Judgement, { limit }: Printed): Line[] {
  if (gauge.unit === line.unit) return [];
  return [{ say: 'converted', with: { limit: exact(line[end] ?? 0, line.unit), same: limit } }];
}

function comparisonLine({ shown, gauge, value, comparison, inside, guard }: Judgement, printed: Printed): Line {
  const { unit } = gauge;
  const verdict = { name: 'verdict' as const, id: verdictOf(comparison) };
  if (shown.kind === 'off-scale')
    return {
      say: comparison === 'too-close' ? 'stopOpen' : 'stopSettled',
      with: { way: shown.end, end: exact(value, unit), limit: printed.limit, verdict },
    };
  return {
    say: 'compared',
    with: {
      value: exact(value, unit),
      limit: printed.limit,
      distance: printed.distance,
      side: inside < 0 ? 'outside' : 'inside',
      than: Math.abs(inside) > guard ? 'more' : 'less',
      guard: printed.guard,
      verdict,
    },
  };
}
