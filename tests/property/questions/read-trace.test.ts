import { expect, test } from 'vitest';
import { expectSoundQuestions } from '../../support/sound-questions';

test('a recorded trace is read in stretches that cover it, one of which is where it goes wrong', () => {
  const forms = new Set<string>();
  expectSoundQuestions('read-trace', ({ figure, answer, key }) => {
    if (figure?.figure !== 'trace') throw new Error('No trace');
    forms.add(answer.form);
    const [line] = figure.lines;
    expect(line?.values.length).toBeGreaterThan(50);
    for (const [index, { from, to }] of figure.stretches.entries()) {
      expect(from).toBeLessThan(to);
      expect(from).toBe(index === 0 ? 0 : figure.stretches[index - 1]?.to);
    }
    if (key.form === 'stretch' || key.form === 'choice') expect(key.right).toHaveLength(1);
  });
  expect(forms.size).toBeGreaterThan(0);
}, 300_000);
