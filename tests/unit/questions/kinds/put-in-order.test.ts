import { describe, expect, it } from 'vitest';
import { questionFromSeed } from '@/lib/questions/question-from-seed';
import { catalogue } from '../../../support/bench-rig';

const content = catalogue.questions.get('put-in-order');
const procedures = content?.ranges.procedures as {
  id: string;
  topics: string[];
  cautions: string[];
  steps: string[];
}[];

describe('put in order', () => {
  it('has words for every step and for why it stands there', () => {
    const lines = content?.text.en.lines ?? {};
    for (const { id, steps } of procedures) {
      expect(lines).toHaveProperty(`order-${id}`);
      for (const step of steps) {
        expect(lines).toHaveProperty(`step-${id}-${step}`);
        expect(lines).toHaveProperty(`why-${id}-${step}`);
      }
    }
  });

  it('proves that the rail is empty before a high-pressure nut is turned, and then keeps the key away', () => {
    const steps = procedures.find(({ id }) => id === 'isolation')?.steps ?? [];
    const turns = ['read', 'tag', 'crack', 'weep', 'part'].map((step) => steps.indexOf(step));
    expect(turns).toEqual([...turns].sort((a, b) => a - b));
  });

  it('has the cautions of a procedure come with the answer', () => {
    const topic = 'safe-working-and-isolation';
    for (let seed = 0; seed < 50; seed++) {
      const question = questionFromSeed({ kind: 'put-in-order', seed: `cautions-${seed}`, topic }, catalogue);
      expect(question.cautionsAfter?.length).toBeGreaterThan(0);
    }
  });

  it('never puts two parts that lie side by side in one question', () => {
    for (let seed = 0; seed < 300; seed++) {
      const spec = {
        kind: 'put-in-order',
        seed: `beside-${seed}`,
        rig: 'petrel-15',
        topic: 'flow-path-and-components',
      };
      const shown = JSON.stringify(questionFromSeed(spec as never, catalogue).answer);
      expect(shown.includes('"high-pressure-pump"') && shown.includes('"high-pressure-pump-rear"')).toBe(false);
    }
  });
});
