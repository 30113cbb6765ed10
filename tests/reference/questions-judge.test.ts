import { expect, test } from 'vitest';
import type { Gauge } from '@/lib/gauges/gauge';
import { judgeBody } from '@/lib/questions/kinds/judge';
import { judgementOf } from '@/lib/questions/kinds/judge/judgement';
import { markAnswer } from '@/lib/questions/mark';
import { randomStream } from '@/lib/random';
import { catalogue } from '../support/bench-rig';

// Worked example, limit of at most 6.0 inHg: a gauge 0–30 inHg of ASME B40.100 grade B (3 % of span in the lower quarter)
// read to ± 0.25 has u = 0.539, w = 1.645 u = 0.887: proven good ≤ 5.11, proven bad ≥ 6.89. A gauge 0–15 inHg of grade 1A
// (1 %) read to ± 0.1 has u = 0.104: 5.83 and 6.17.
// Computed from JCGM 106:2012 clause 8.3 and ISO 14253-1:2017 (95 %, one-sided); grades from memory.
test.each<[string, number, string]>([
  ['grade B', 5.0, 'pass'],
  ['grade B', 5.25, 'tooClose'],
  ['grade B', 6.75, 'tooClose'],
  ['grade B', 7.0, 'failAbove'],
  ['grade 1A', 5.8, 'pass'],
  ['grade 1A', 5.9, 'tooClose'],
  ['grade 1A', 6.1, 'tooClose'],
  ['grade 1A', 6.2, 'failAbove'],
])('a %s gauge that shows %d inHg against at most 6.0 inHg', (grade, value, right) => {
  const question = suctionQuestion(grade, value);
  const options = question.answer.form === 'choice' ? question.answer.options : [];
  const earned = options.filter(({ id }) => markAnswer(question, { form: 'choice', option: id }).credit === 1);
  expect(earned.map(({ line }) => ('say' in line ? line.say : ''))).toEqual([right]);
});

test('the explanation works out u and the guard band of the grade B gauge', () => {
  const [line] = suctionQuestion('grade B', 6).explanation.filter((one) => 'say' in one && one.say === 'guard');
  const said = line && 'say' in line ? line.with : {};
  expect(said).toMatchObject({
    uncertainty: { quantity: expect.closeTo(0.539, 3) },
    guard: { quantity: expect.closeTo(0.887, 3) },
  });
});

test('the explanation works out u of the grade 1A gauge', () => {
  const [line] = suctionQuestion('grade 1A', 6).explanation.filter((one) => 'say' in one && one.say === 'guard');
  expect(line && 'say' in line ? line.with : {}).toMatchObject({ uncertainty: { quantity: expect.closeTo(0.104, 3) } });
});

function suctionQuestion(grade: string, value: number) {
  const gauge = gaugeOf(grade);
  const check = catalogue.checks.get('suction-restriction');
  const quantity = check?.quantities[0];
  if (!check || !quantity) throw new Error('Content has no such check');
  const line = {
    id: 'six',
    check: check.id,
    condition: 'high-idle' as const,
    quantity: quantity.id,
    max: 6,
    unit: 'inHg' as const,
    source: { kind: 'assumed' as const, because: 'the limit of the worked example' },
  };
  const limited = { check, quantity, condition: 'high-idle' as const, line };
  const shown = { kind: 'value' as const, quantity: quantity.id, value, unit: gauge.unit };
  const judgement = judgementOf(limited, gauge.id, gauge, shown);
  return {
    ...judgeBody(judgement, { classAlone: false, topics: [], shuffle: randomStream('example', 'shuffle') }),
    difficulty: 0,
  };
}

function gaugeOf(grade: string): Gauge {
  const gradeB = catalogue.gauges.get('vacuum-dial-0-30-inhg');
  if (!gradeB) throw new Error('Content has no such gauge');
  if (grade === 'grade B') return gradeB;
  return {
    ...gradeB,
    range: { min: 0, max: 15 },
    resolution: 0.1,
    accuracy: { kind: 'quarters', percentOfSpan: [1, 1, 1] },
  };
}
