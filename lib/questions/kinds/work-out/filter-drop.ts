import { z } from 'zod';
import { fromSi, toSi } from '../../../units';
import type { Draw } from '../../kind';
import { drawDay } from '../../shared/rig-day';
import { brokenPoint, holds, overAmbient, severitySchema, upperLimits } from './broken-point';
import { defineExercise } from './exercise';
import { amount, bare, only, rounded, type Sum, say, slip, sumsBody, toStep } from './sum';

const topics = ['filtration', 'low-pressure-supply-and-regulation'];

const ranges = z.strictObject({
  severity: severitySchema,
  /** Units that the gauge at the outlet may be set to. */
  outletIn: z.array(z.enum(['kPa', 'bar', 'psi'])).min(1),
  stepKpa: z.number().positive(),
  leastDropKpa: z.number().positive(),
  toleranceKpa: z.number().positive(),
});

type Ranges = z.infer<typeof ranges>;

/** What one of a unit is in kilopascals as a chart prints it, and the decimals of a reading. */
const chart = {
  kPa: { kpa: 1, decimals: 0, factorDecimals: 0 },
  bar: { kpa: 100, decimals: 2, factorDecimals: 0 },
  psi: { kpa: 6.895, decimals: 1, factorDecimals: 3 },
} as const;

type Given = NonNullable<ReturnType<typeof measure>>;

export const filterDrop = defineExercise({
  id: 'filterDrop',
  topics,
  ranges,
  draw(draw) {
    const given = measure(draw);
    if (!given || given.drop < draw.ranges.leastDropKpa) return undefined;
    const values = worded(given, draw.rig.id);
    return sumsBody({
      stem: [
        say('filterDrop-stem', only(values, 'rig', 'condition', 'inlet', 'unit', 'outlet')),
        say('filterDrop-sheet', only(values, 'limit', 'unit')),
      ],
      sums: [dropSum(given, draw.ranges.toleranceKpa), shareSum(given, draw.ranges.toleranceKpa)],
      explanation: [
        ...(given.unit === 'kPa' ? [] : [say('filterDrop-convert', values)]),
        say('filterDrop-subtract', values),
        say('filterDrop-divide', values),
      ],
      topics,
      features: { conversion: Number(given.unit !== 'kPa') },
      seconds: 90,
    });
  },
});

/** What the two gauges show and what follows, kPa where nothing else is said. */
function measure({ rig, ranges, catalogue, stream }: Draw<Ranges>) {
  const line = stream('limit').pick(upperLimits(rig, 'main-filter-drop'));
  const fault = { cause: 'main-filter-plugged', severity: stream('severity').between(...ranges.severity) };
  const point = brokenPoint(drawDay(stream('day'), rig, catalogue), fault, line.condition, catalogue);
  if (!holds(point)) return undefined;
  const unit = stream('unit').pick(ranges.outletIn);
  const { kpa, decimals } = chart[unit];
  const inlet = toStep(fromSi(overAmbient(point, 'main-filter-inlet'), 'kPa'), ranges.stepKpa);
  const truth = fromSi(overAmbient(point, 'main-filter-outlet'), unit);
  const outlet = unit === 'kPa' ? toStep(truth, ranges.stepKpa) : rounded(truth, decimals);
  const outletKpa = rounded(outlet * kpa, 1);
  const limit = fromSi(toSi(line.max, line.unit), 'kPa');
  return { condition: line.condition, unit, inlet, outlet, outletKpa, drop: inlet - outletKpa, limit };
}

function worded({ condition, unit, inlet, outlet, outletKpa, drop, limit }: Given, rig: string) {
  const { kpa, decimals, factorDecimals } = chart[unit];
  const fine = unit === 'psi' ? 1 : 0;
  return {
    rig: { name: 'rig', id: rig },
    condition: { name: 'condition', id: condition },
    inlet: amount(inlet, 'kPa', 0),
    outlet: amount(outlet, unit, decimals),
    unit,
    factor: bare(kpa, factorDecimals),
    outletKpa: amount(outletKpa, 'kPa', fine),
    drop: amount(drop, 'kPa', fine),
    limit: amount(limit, 'kPa', 0),
    share: amount((100 * drop) / limit, '%', 0),
    over: drop > limit ? 'yes' : 'no',
  } as const;
}

function dropSum({ unit, inlet, outlet, outletKpa, drop }: Given, tolerance: number): Sum {
  const misread = unit === 'kPa' ? [] : [slip('unit-of-another', inlet - outlet)];
  return {
    id: 'drop',
    line: say('filterDrop-drop'),
    units: ['kPa', 'psi', 'bar'],
    value: drop,
    tolerance,
    slips: [slip('added', inlet + outletKpa), slip('sign', -drop), slip('outlet-alone', outletKpa), ...misread],
  };
}

function shareSum({ inlet, drop, limit }: Given, toleranceKpa: number): Sum {
  return {
    id: 'share',
    line: say('filterDrop-share'),
    units: ['%'],
    value: (100 * drop) / limit,
    tolerance: (100 * toleranceKpa) / limit,
    slips: [slip('upside-down', (100 * limit) / drop), slip('share-of-inlet', (100 * drop) / inlet)],
    follows: { part: 'drop', value: (earlier) => (100 * earlier) / limit },
  };
}
