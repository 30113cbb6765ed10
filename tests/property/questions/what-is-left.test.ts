import { expect, test } from 'vitest';
import { areas as allAreas } from '@/lib/areas';
import { believedFrom } from '../../support/believed-from';
import { expectEachVerdict, expectJudged } from '../../support/expect-judged';
import { expectSoundQuestions } from '../../support/sound-questions';

/** Every so many is worked out again from nothing but what it shows. */
const AGAIN = 100;

test('what is left is what the computed belief leaves, worked out anew from what is shown', () => {
  let again = 0;
  const verdicts: string[] = [];
  expectSoundQuestions('what-is-left', (question, seed) => {
    const { answer, key, figure } = question;
    if (answer.form !== 'several' || key.form !== 'several') throw new Error('Another form');
    expect(key.right.length).toBeGreaterThan(0);
    expect(answer.options.length - key.right.length).toBeGreaterThanOrEqual(2);
    expect(figure?.figure === 'readings' && figure.readings).toHaveLength(3);
    if (figure?.figure === 'readings') verdicts.push(...figure.readings.map(expectJudged));
    if (seed % AGAIN > 0) return;
    const { areas } = believedFrom(question);
    again++;
    for (const { id, line } of answer.options) {
      const named = 'say' in line ? line.with?.area : undefined;
      const area = allAreas.find((one) => typeof named === 'object' && 'id' in named && named.id === one);
      if (!area) throw new Error('An option that is no area');
      if (key.right.includes(id)) expect(areas[area], area).toBeGreaterThan(0.14);
      else expect(areas[area], area).toBeLessThan(0.05);
    }
  });
  expect(again).toBe(50);
  expectEachVerdict(verdicts);
}, 300_000);
