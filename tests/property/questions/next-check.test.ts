import { expect, test } from 'vitest';
import { hookUpKey, nextChecks } from '@/lib/diagnosis/next-check';
import type { Line } from '@/lib/questions/line';
import { believedFrom } from '../../support/believed-from';
import { expectEachVerdict, expectJudged } from '../../support/expect-judged';
import { expectSoundQuestions } from '../../support/sound-questions';

const AGAIN = 100;

const idOf = (line: Line, name: string) => {
  const value = 'say' in line ? line.with?.[name] : undefined;
  return typeof value === 'object' && 'id' in value ? value.id : '';
};

test('the best check is the one that tells most per minute, worked out anew from what is shown', () => {
  let again = 0;
  const verdicts: string[] = [];
  expectSoundQuestions('next-check', (question, seed) => {
    const { answer, key, figure } = question;
    if (answer.form !== 'choice' || key.form !== 'choice') throw new Error('Another form');
    const offered = answer.options.map(({ line }) => idOf(line, 'check'));
    expect(new Set(offered).size).toBe(offered.length);
    if (figure?.figure === 'readings') verdicts.push(...figure.readings.map(expectJudged));
    if (seed % AGAIN > 0) return;
    const { particles, belief } = believedFrom(question);
    const readings = figure?.figure === 'readings' ? figure.readings : [];
    const done = new Set(readings.map(({ check, condition }) => hookUpKey(check, condition)));
    const worth = nextChecks(particles, belief, done);
    const worthOf = (line: Line) =>
      worth.find((one) => one.check === idOf(line, 'check') && one.condition === idOf(line, 'condition'))?.perMinute;
    const right = answer.options
      .filter(({ id }) => key.right.includes(id))
      .map(({ line }) => worthOf(line) ?? Number.NaN);
    const best = Math.max(...right);
    again++;
    for (const value of right) expect(value).toBeGreaterThan(0.88 * best);
    for (const { id, line } of answer.options)
      if (!key.right.includes(id)) expect(worthOf(line), idOf(line, 'check')).toBeLessThan(0.72 * best);
  });
  expect(again).toBe(50);
  expectEachVerdict(verdicts);
}, 300_000);
