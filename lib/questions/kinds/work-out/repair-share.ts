import { z } from 'zod';
import { trueValue } from '../../../checks/quantity';
import { isSteady } from '../../../rig/condition';
import { idSchema } from '../../../source';
import { fromSi, toSi, type Unit } from '../../../units';
import type { Draw } from '../../kind';
import { brokenState, drawDay } from '../../shared/rig-day';
import { brokenPoint, holds, severitySchema, type UpperLimit, upperLimits } from './broken-point';
import { defineExercise } from './exercise';
import { amount, only, rounded, type Sum, say, slip, sumsBody } from './sum';

const topics = ['reasoning-and-repair-proof'];

const ranges = z.strictObject({
  severity: severitySchema,
  /** A cause, and a check that shows it by a reading that is too high. */
  repairs: z.array(z.strictObject({ cause: idSchema, check: idSchema, unit: z.enum(['kPa', 'mL/min']) })).min(1),
  /** Of the limit, for what is left after the repair: less could hardly be read. */
  leastShareOfLimit: z.number().min(0).max(1),
});

type Ranges = z.infer<typeof ranges>;

type Given = NonNullable<ReturnType<typeof measure>>;

export const repairShare = defineExercise({
  id: 'repairShare',
  topics,
  ranges,
  draw(draw) {
    const given = measure(draw);
    if (!given) return undefined;
    const values = worded(given, draw.rig.id);
    return sumsBody({
      stem: [say('repairShare-stem', only(values, 'rig', 'condition', 'quantity', 'before', 'after', 'limit'))],
      sums: [fallSum(given), shareSum(given)],
      explanation: [
        say('repairShare-subtract', values),
        say('repairShare-divide', values),
        say('repairShare-meaning', values),
      ],
      topics,
      seconds: 75,
    });
  },
});

function measure(draw: Draw<Ranges>) {
  const { rig, ranges, catalogue, stream } = draw;
  const fitting = ranges.repairs.flatMap(({ unit, ...repair }) =>
    upperLimits(rig, repair.check).map((line) => ({ ...repair, line, unit })),
  );
  const { cause: id, line, unit } = stream('repair').pick(fitting);
  const [before, after] = readings(draw, id, line, unit);
  if (before === undefined || after === undefined) return undefined;
  const limit = fromSi(toSi(line.max, line.unit), unit);
  // Before the repair it failed and after it passes, or there would be nothing to prove.
  if (
    before <= limit ||
    after >= limit ||
    after < ranges.leastShareOfLimit * limit ||
    catalogue.causes.get(id) === undefined
  )
    return undefined;
  return { line, unit, before, after, limit, fall: (100 * (before - after)) / before, share: (100 * after) / limit };
}

/** What the check would show with the part as it was, and with a sound one. */
function readings({ rig, ranges, catalogue, stream }: Draw<Ranges>, id: string, line: UpperLimit, unit: Unit) {
  const cause = catalogue.causes.get(id);
  const quantity = catalogue.checks.get(line.check)?.quantities.find((one) => one.id === line.quantity);
  if (!cause || !quantity || !isSteady(line.condition)) return [];
  const day = drawDay(stream('day'), rig, catalogue);
  const severity = stream('severity').between(...ranges.severity);
  if (line.condition !== 'cranking' && !holds(brokenPoint(day, { cause: id, severity }, line.condition, catalogue)))
    return [];
  return [brokenState(day, cause, severity), day].map((state) =>
    rounded(fromSi(trueValue(state, line.condition, quantity, 0), unit), unit === 'kPa' ? 1 : 0),
  );
}

function worded({ line, unit, before, after, limit, fall, share }: Given, rig: string) {
  const decimals = unit === 'kPa' ? 1 : 0;
  return {
    rig: { name: 'rig', id: rig },
    condition: { name: 'condition', id: line.condition },
    quantity: { name: 'check-quantity', id: line.quantity, of: line.check },
    before: amount(before, unit, decimals),
    after: amount(after, unit, decimals),
    limit: amount(limit, unit, 0),
    difference: amount(before - after, unit, decimals),
    fall: amount(fall, '%', 0),
    share: amount(share, '%', 0),
  } as const;
}

function fallSum({ before, after, fall }: Given): Sum {
  return {
    id: 'fall',
    line: say('repairShare-fall'),
    units: ['%'],
    value: fall,
    tolerance: 1,
    slips: [
      slip('share-of-new', (100 * (before - after)) / after),
      slip('share-that-is-left', (100 * after) / before),
      slip('difference-alone', before - after),
    ],
  };
}

function shareSum({ before, after, limit, share }: Given): Sum {
  return {
    id: 'share',
    line: say('repairShare-share'),
    units: ['%'],
    value: share,
    tolerance: 1,
    slips: [
      slip('upside-down', (100 * limit) / after),
      slip('before-for-after', (100 * before) / limit),
      slip('room-left', 100 - share),
    ],
  };
}
