import { describe, expect, test } from 'vitest';
import { type QuestionKindId, questionKindIds } from '@/lib/questions/question';
import { kindOf, kindsOn, questionFromSeed } from '@/lib/questions/question-from-seed';
import { drawCase } from '@/lib/sets/draw-case';
import type { QuestionsItem } from '@/lib/sets/draw-question';
import { expectedCases, expectedQuestions } from '@/lib/sets/expected-tasks';
import type { CaseWishes } from '@/lib/sets/set-body';
import { catalogue } from '../../support/bench-rig';

function cases(wishes: CaseWishes, count = 1) {
  return { id: 'a', kind: 'cases', count, wishes } as const;
}

describe('what drawn cases are expected to be', () => {
  // Against cases that are drawn here; the means that are compared carry an error of some 0.2 logits and 4 minutes.
  test.each<[string, CaseWishes, number]>([
    ['without wishes', {}, 12],
    ['on a topic', { topics: ['filtration'] }, 8],
    ['on quick ones', { topics: ['electrical-supply-sensors-and-codes'] }, 8],
  ])(
    'is near what the generator draws %s',
    (_what, wishes, count) => {
      const drawn = Array.from({ length: count }, (_, n) =>
        drawCase(cases(wishes), `expected ${n}`, catalogue),
      ).flatMap((found) => ('case' in found ? found.certificate : []));
      const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
      const { difficulty, minutes } = expectedCases(cases(wishes));
      expect(drawn).toHaveLength(count);
      expect(Math.abs(mean(drawn.map((one) => one.difficulty)) - difficulty)).toBeLessThan(0.6);
      expect(Math.abs(mean(drawn.map((one) => one.route.minutes)) - minutes)).toBeLessThan(12);
    },
    60_000,
  );

  test('lies within a band that is wished for, and takes no longer than is wished', () => {
    expect(expectedCases(cases({ difficulty: [-0.5, 0.5] }, 3))).toMatchObject({ count: 3, topics: [] });
    for (const band of [
      [-6, 6],
      [-0.5, 0.5],
      [2, 3],
      [-5, -4],
    ] as [number, number][]) {
      const { difficulty } = expectedCases(cases({ difficulty: band }));
      expect(difficulty).toBeGreaterThanOrEqual(band[0]);
      expect(difficulty).toBeLessThanOrEqual(band[1]);
    }
    expect(expectedCases(cases({ minutes: 10 })).minutes).toBe(10);
  });

  test('is harder at the hardest level, and hardest with two things wrong', () => {
    const at = (wishes: CaseWishes) => expectedCases(cases(wishes)).difficulty;
    const one = at({ hardest: true, faults: 'single' });
    expect(one).toBeGreaterThan(at({ faults: 'single' }));
    expect(at({ hardest: true })).toBeGreaterThan(one);
    expect(at({ hardest: true, faults: 'double' })).toBeGreaterThan(at({ hardest: true }));
  });
});

describe('what drawn questions are expected to be', () => {
  const item = (topic: string, questionKind?: QuestionKindId): QuestionsItem => ({
    id: 'a',
    kind: 'questions',
    count: 4,
    topic,
    ...(questionKind && { questionKind }),
  });

  test.each(questionKindIds)('of the kind %s: near what it draws', (kind) => {
    const [topic = ''] = kindOf(kind, catalogue).kind.topics;
    const drawn = [0, 1, 2, 3].map((n) => questionFromSeed({ kind, seed: `expected ${n}` }, catalogue));
    const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    const expected = expectedQuestions(item(topic, kind));
    expect(expected).toMatchObject({ topics: [topic], count: 4 });
    expect(Math.abs((expected?.difficulty ?? 9) - mean(drawn.map(({ difficulty }) => difficulty)))).toBeLessThan(0.5);
    expect((expected?.minutes ?? 0) * 60).toBeGreaterThan(0.55 * mean(drawn.map(({ seconds }) => seconds)));
    expect((expected?.minutes ?? 99) * 60).toBeLessThan(1.8 * mean(drawn.map(({ seconds }) => seconds)));
  });

  test('of any kind: the mean over those on the topic; on a topic without any, nothing', () => {
    const topic = 'flow-path-and-components';
    const each = kindsOn(topic).map((kind) => expectedQuestions(item(topic, kind))?.minutes ?? 0);
    const sum = each.reduce((total, minutes) => total + minutes, 0);
    expect(expectedQuestions(item(topic))?.minutes).toBeCloseTo(sum / each.length, 6);
    expect(expectedQuestions(item('knitting'))).toBeUndefined();
  });
});
