import { describe, expect, it } from 'vitest';
import { drawingOf } from '@/app/_server/drawings';
import { questionFromSeed } from '@/lib/questions/question-from-seed';
import { catalogue } from '../../../support/bench-rig';

const screens = catalogue.questions.get('find-it')?.ranges.screens as Record<string, string[]>;

describe('find it', () => {
  it('says of the same parts as the drawing that they look like a screen', () => {
    for (const rig of catalogue.rigs.keys()) {
      const drawn = Object.entries(drawingOf(rig).elements).filter(([, place]) => 'symbol' in place && place.symbol);
      expect(screens[rig]).toEqual(drawn.map(([id]) => id));
    }
  });

  it('lists the places of a drawing from the tank to the return line', () => {
    const targets = firstPoint('tern-13', 'element');
    expect(targets[0]).toBe('fuel-tank');
    expect(targets.at(-1)).toBe('return-line');
    expect(targets.indexOf('gear-pump')).toBeLessThan(targets.indexOf('main-filter'));
    expect(targets.indexOf('main-filter')).toBeLessThan(targets.indexOf('high-pressure-pump'));
  });

  it('never asks for one of two parts that look the same in the same place', () => {
    for (let seed = 0; seed < 300; seed++) {
      const { answer, key } = questionFromSeed({ kind: 'find-it', seed: `twins-${seed}`, rig: 'petrel-15' }, catalogue);
      if (answer.form !== 'point' || key.form !== 'point') continue;
      const right = answer.targets.filter(({ id }) => key.right.includes(id)).map(({ of }) => of);
      expect(right).not.toContain('high-pressure-pump');
      expect(right).not.toContain('high-pressure-pump-rear');
    }
  });
});

function firstPoint(rig: string, what: string): string[] {
  for (let seed = 0; seed < 100; seed++) {
    const { answer } = questionFromSeed({ kind: 'find-it', seed: `list-${seed}`, rig }, catalogue);
    if (answer.form === 'point' && answer.targets[0]?.what === what) return answer.targets.map(({ of }) => of);
  }
  throw new Error('Never asked to point');
}
