import { z } from 'zod';
import type { Catalogue } from '../../../catalogue';
import type { Gauge } from '../../../gauges/gauge';
import { accuracyLimit } from '../../../gauges/uncertainty';
import { isSteady } from '../../../rig/condition';
import type { LimitLine, Rig } from '../../../rig/rig';
import { dimensionOf, fromSi, toSi } from '../../../units';
import type { Draw } from '../../kind';
import { defineExercise } from './exercise';
import { amount, bare, only, rounded, type Sum, say, slip, sumsBody } from './sum';

const topics = ['instruments-and-uncertainty', 'reasoning-and-repair-proof'];

const ranges = z.strictObject({
  /** Of the allowed error and of the guard band. */
  shareTolerance: z.number().positive(),
  /** Least share of its span at which an instrument is still any good for a limit. */
  leastShareOfSpan: z.number().min(0).max(1),
});

type Ranges = z.infer<typeof ranges>;

/** Nobody trusts a pointer near its stop. */
const MOST_OF_SPAN = 0.9;

/** In standard uncertainties, for 95 % on one side. @source ISO 14253-1:2017 (from memory). */
const GUARD = 1.645;

type Given = NonNullable<ReturnType<typeof choose>>;

export const guardBand = defineExercise({
  id: 'guardBand',
  topics,
  ranges,
  draw(draw) {
    const given = choose(draw);
    if (!given) return undefined;
    const values = worded(given, draw);
    return sumsBody({
      stem: [
        say(
          'guardBand-stem',
          only(
            values,
            'rig',
            'condition',
            'quantity',
            'limit',
            'gauge',
            'percentNumber',
            'percent',
            'span',
            'readable',
          ),
        ),
        say('guardBand-rule'),
      ],
      sums: [allowedSum(given, draw.ranges), uncertaintySum(given, draw.ranges), failsSum(given, draw.ranges)],
      explanation: [
        say('guardBand-allowed-step', values),
        say('guardBand-uncertainty-step', values),
        say('guardBand-fails-step', values),
        say('guardBand-between', values),
      ],
      topics,
      features: { root: 1 },
      seconds: 180,
    });
  },
});

/** A limit with a highest value and an instrument whose class is a share of its span. */
function choose({ rig, ranges, catalogue, stream }: Draw<Ranges>) {
  const pairs = pairsOn(rig, catalogue, ranges.leastShareOfSpan);
  if (pairs.length === 0) return undefined;
  const { line, gauge, limit } = stream('pair').pick(pairs);
  const allowed = accuracyLimit(gauge, limit);
  const readable = gauge.display === 'digital' ? gauge.resolution / 2 : gauge.resolution;
  const uncertainty = Math.hypot(allowed, readable) / Math.sqrt(3);
  return { line, gauge, limit, allowed, readable, uncertainty, fails: limit + GUARD * uncertainty };
}

interface Pair {
  line: LimitLine;
  gauge: Gauge;
  /** In the instrument's unit, as it is printed. */
  limit: number;
}

function pairsOn({ limits }: Rig, { checks, gauges }: Pick<Catalogue, 'checks' | 'gauges'>, least: number): Pair[] {
  return limits.flatMap((line) => {
    const { max } = line;
    if (max === undefined || !isSteady(line.condition) || dimensionOf(line.unit) !== 'pressure') return [];
    const fitting = (checks.get(line.check)?.instruments ?? []).flatMap((id) => gauges.get(id) ?? []);
    return fitting.flatMap((gauge) => {
      if (gauge.accuracy.kind !== 'class' || dimensionOf(gauge.unit) !== 'pressure') return [];
      const limit = rounded(fromSi(toSi(max, line.unit), gauge.unit), gauge.unit === 'kPa' ? 0 : 1);
      const share = (limit - gauge.range.min) / (gauge.range.max - gauge.range.min);
      return share >= least && share <= MOST_OF_SPAN ? [{ line, gauge, limit }] : [];
    });
  });
}

function worded({ line, gauge, limit, allowed, readable, uncertainty, fails }: Given, { rig }: { rig: Rig }) {
  const { unit, range, accuracy } = gauge;
  const percent = accuracy.kind === 'class' ? accuracy.percentOfSpan : Number.NaN;
  return {
    rig: { name: 'rig', id: rig.id },
    gauge: { name: 'gauge', id: gauge.id },
    quantity: { name: 'check-quantity', id: line.quantity, of: line.check },
    condition: { name: 'condition', id: line.condition },
    percent: amount(percent, '%', decimalsOf(percent)),
    percentNumber: bare(percent, decimalsOf(percent)),
    span: amount(range.max - range.min, unit, 0),
    spanNumber: bare(range.max - range.min, 0),
    limit: amount(limit, unit, unit === 'kPa' ? 0 : 1),
    readable: amount(readable, unit, decimalsOf(readable)),
    readableNumber: bare(readable, decimalsOf(readable)),
    allowed: amount(allowed, unit, 2),
    allowedNumber: bare(allowed, 2),
    uncertainty: amount(uncertainty, unit, 2),
    uncertaintyNumber: bare(uncertainty, 2),
    guard: amount(GUARD * uncertainty, unit, 2),
    fails: amount(fails, unit, 2),
    passes: amount(limit - GUARD * uncertainty, unit, 2),
  } as const;
}

function allowedSum({ gauge, limit, allowed }: Given, { shareTolerance }: Ranges): Sum {
  const percent = gauge.accuracy.kind === 'class' ? gauge.accuracy.percentOfSpan : Number.NaN;
  return {
    id: 'allowed',
    line: say('guardBand-allowed'),
    units: [gauge.unit],
    value: allowed,
    tolerance: allowed * shareTolerance,
    slips: [slip('of-the-limit', (percent / 100) * limit), slip('percent-as-unit', percent)].filter(
      // With a span of 100 the class is the error, in so many words.
      ({ value }) => Math.abs(value - allowed) > 1e-9,
    ),
  };
}

function uncertaintySum({ gauge, allowed, readable, uncertainty }: Given, { shareTolerance }: Ranges): Sum {
  const of = (error: number) => Math.hypot(error, readable) / Math.sqrt(3);
  return {
    id: 'uncertainty',
    line: say('guardBand-uncertainty'),
    units: [gauge.unit],
    value: uncertainty,
    tolerance: uncertainty * shareTolerance,
    slips: [
      slip('root-left-out', Math.hypot(allowed, readable)),
      slip('added-straight', (allowed + readable) / Math.sqrt(3)),
      slip('divided-by-three', Math.hypot(allowed, readable) / 3),
    ].filter(({ value }) => Math.abs(value - uncertainty) > 3 * shareTolerance * uncertainty),
    follows: { part: 'allowed', value: of },
  };
}

function failsSum({ gauge, limit, uncertainty, fails }: Given, { shareTolerance }: Ranges): Sum {
  return {
    id: 'fails',
    line: say('guardBand-fails'),
    units: [gauge.unit],
    value: fails,
    tolerance: GUARD * uncertainty * 2 * shareTolerance,
    slips: [
      slip('below-the-limit', limit - GUARD * uncertainty),
      slip('limit-itself', limit),
      slip('guard-left-out', limit + uncertainty),
      slip('band-alone', GUARD * uncertainty),
    ],
    follows: { part: 'uncertainty', value: (earlier) => limit + GUARD * earlier },
  };
}

function decimalsOf(value: number): number {
  return String(Number(value.toPrecision(6))).split('.')[1]?.length ?? 0;
}
