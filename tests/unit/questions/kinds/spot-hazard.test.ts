import { describe, expect, it } from 'vitest';
import messages from '@/content/messages/en.json' with { type: 'json' };
import type { GeneratedQuestion } from '@/lib/questions/question';
import { questionFromSeed } from '@/lib/questions/question-from-seed';
import { catalogue } from '../../../support/bench-rig';

const content = catalogue.questions.get('spot-hazard');
const pairs = content?.ranges.pairs as { id: string; wrong: string[]; right: string[]; cautions: string[] }[];

describe('spot the hazard', () => {
  it('has words for what is wrong and for what is right, and names cautions that there are', () => {
    const lines = content?.text.en.lines ?? {};
    for (const { id, wrong, right, cautions } of pairs) {
      const words = ['hazard', 'why-hazard', 'first', 'botch', 'against'].map((what) => `${what}-${id}`);
      if (wrong.length > 0) for (const word of words) expect(lines).toHaveProperty(word);
      if (right.length > 0) for (const word of [`safe-${id}`, `why-safe-${id}`]) expect(lines).toHaveProperty(word);
      for (const caution of cautions) expect(messages.cautions).toHaveProperty(caution);
    }
  });

  it('never leaves a full rail out of what is dangerous where a line is to come off', () => {
    for (const question of drawn(600)) {
      const shown = JSON.stringify(question);
      const off = /"off":(\d+)/.exec(shown);
      if (!shown.includes('scene-open') || !off || Number(off[1]) > 60) continue;
      expect(shown).toMatch(/hazard-nut|first-nut/);
    }
  });

  it('says the same of a gauge or a wrench whether it is dangerous or not, so that only the numbers tell', () => {
    const lines = content?.text.en.lines ?? {};
    for (const id of ['gauge', 'gauge-crank', 'nut']) expect(lines[`safe-${id}`]).toBe(lines[`hazard-${id}`]);
  });

  it('asks in each of its ways, and of each thing that can be wrong', () => {
    const all = drawn(1500).map((question) => JSON.stringify(question));
    for (const ask of ['ask-stop', 'ask-all', 'ask-first']) expect(all.some((one) => one.includes(ask))).toBe(true);
    const dangers = [
      ...pairs.filter(({ wrong }) => wrong.length > 0).map(({ id }) => id),
      'gauge',
      'gauge-crank',
      'nut',
    ];
    for (const id of dangers)
      expect(
        all.some((one) => one.includes(`"hazard-${id}"`)),
        id,
      ).toBe(true);
  });
});

function drawn(seeds: number): GeneratedQuestion[] {
  return Array.from({ length: seeds }, (_, seed) =>
    questionFromSeed({ kind: 'spot-hazard', seed: `unit-${seed}` }, catalogue),
  );
}
