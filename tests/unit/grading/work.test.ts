import { expect, test } from 'vitest';
import type { CallGrade } from '@/lib/grading/grade-call';
import type { GradedFinding } from '@/lib/grading/grade-finding';
import { type Mark, shareOf } from '@/lib/grading/mark';
import { marksOf, type Work } from '@/lib/grading/work';
import { aRig, catalogue } from '../../support/bench-rig';
import { standardRubric } from '../../support/marking';

const right: Mark = { code: 'verdict-right', values: {}, share: 1, most: 1 };
const finding = { verdict: [right], reason: [right] } as unknown as GradedFinding;
const correct: CallGrade['correct'] = { cause: true, area: true, repair: true, proof: true };
const called: CallGrade = { marks: [], correct, onTheWay: true, wrongRepairs: [] };

/** What so many right findings earn, where the expert needed so many readings. */
function earned(findings: number, readings: number) {
  const work: Work = { readings: [], findings: Array(findings).fill(finding), steps: [], events: [], restoring: [] };
  const expert = { steps: Array(readings).fill(null), minutes: 20 };
  const { verdicts } = marksOf(work, called, expert, { theCase: { rig: aRig() }, catalogue, rubric: standardRubric() });
  return { share: shareOf(verdicts), codes: verdicts.map(({ code }) => code) };
}

test('two findings are asked for, and fewer earn as much less', () => {
  expect(earned(2, 3)).toEqual({ share: 1, codes: ['verdict-right', 'verdict-right'] });
  expect(earned(1, 3)).toEqual({ share: 0.5, codes: ['verdict-right', 'few-findings'] });
  expect(earned(0, 3)).toEqual({ share: 0, codes: ['few-findings'] });
});

test('where the expert needs one reading, one finding is enough; none never is', () => {
  expect(earned(1, 1)).toEqual({ share: 1, codes: ['verdict-right'] });
  expect(earned(1, 0)).toEqual({ share: 1, codes: ['verdict-right'] });
  expect(earned(0, 0)).toEqual({ share: 0, codes: ['few-findings'] });
});

test('more findings than asked for share the marks alike', () => {
  expect(earned(4, 3).share).toBe(1);
});
