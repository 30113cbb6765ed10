import { describe, expect, it } from 'vitest';
import { drawingOf } from '@/app/_server/drawings';
import { nameOf } from '@/app/_server/questions/say';
import type { Target } from '@/lib/questions/figure';
import type { Line } from '@/lib/questions/line';
import type { GeneratedQuestion } from '@/lib/questions/question';
import { aRig, catalogue } from '../../support/bench-rig';
import { expectSoundQuestions } from '../../support/sound-questions';

describe('find it', () => {
  it('has one place for each name, on the drawing, over 5,000 seeds', () => {
    expectSoundQuestions('find-it', (question) => {
      const { answer, figure, key } = question;
      if (figure?.figure !== 'drawing') return expectMirror(question);
      if (answer.form === 'point' && key.form === 'point') {
        for (const target of answer.targets) expectDrawn(target, question.rig);
        const right = answer.targets.filter(({ id }) => key.right.includes(id));
        expect(right).toHaveLength(1);
        expectNamed(asked(question), right[0], question.rig);
      }
      if (answer.form === 'choice' && key.form === 'choice') {
        const [marked] = figure.marked;
        if (marked) expectDrawn(marked, question.rig);
        const named = answer.options.filter((option) => isNamed(option.line, marked, question.rig));
        expect(named.map(({ id }) => id)).toEqual(key.right);
      }
    });
  });
});

function asked({ stem: [line] }: GeneratedQuestion): Line {
  const it = line && 'say' in line ? line.with?.it : undefined;
  if (typeof it !== 'object' || !('line' in it)) throw new Error('Nothing is asked for');
  return it.line;
}

/** A symbol or a line of its own on the sheet, and no place where something may leak. */
function expectDrawn({ what, of }: Target, rig: string): void {
  const drawing = drawingOf(rig);
  const place = drawing[`${what}s`][of];
  expect(place, of).toBeDefined();
  if (what !== 'element') return;
  expect(place, of).not.toHaveProperty('within');
  expect(aRig(rig).elements.find(({ id }) => id === of)?.kind).not.toMatch(/leak$/);
}

function expectNamed(line: Line, target: Target | undefined, rig: string): void {
  expect(isNamed(line, target, rig), `${JSON.stringify(line)} ${JSON.stringify(target)}`).toBe(true);
}

/** Whether words that somebody reads mean what the graph has there. */
function isNamed(line: Line, target: Target | undefined, rigId: string): boolean {
  if (!target || !('say' in line) || !line.with) return false;
  const { elements } = aRig(rigId);
  const name = (value: unknown) => nameOf(value as Parameters<typeof nameOf>[0], catalogue);
  if (target.what === 'element') {
    const same = elements.filter(({ text }) => text.en === name(line.with?.part));
    return same.length === 1 && same[0]?.id === target.of;
  }
  if (target.what === 'port')
    return aRig(rigId).ports.find(({ id }) => id === target.of)?.text.en === name(line.with.port);
  const [from, to] = [line.with.from, line.with.to].map((value) =>
    elements.find(({ text }) => text.en === name(value)),
  );
  const ends = from && 'from' in from && from.to === target.of;
  return Boolean(ends && to && (('from' in to && to.from === target.of) || ('node' in to && to.node === target.of)));
}

/** Somebody who looks against the convention sees both turned round; the words of the options are compared, not the code. */
function expectMirror({ stem: [line], answer, key }: GeneratedQuestion): void {
  if (!line || !('say' in line) || answer.form !== 'choice' || key.form !== 'choice') throw new Error('No choice');
  const stand = JSON.stringify(line.with?.stand);
  const against = /fan-end|in-front/.test(stand);
  const right = answer.options.find(({ id }) => id === key.right[0])?.line;
  if (!right || !('say' in right)) throw new Error('No key');
  expect(right.with?.side === line.with?.hand).toBe(!against);
  expect(right.with?.turn === line.with?.turn).toBe(!against);
}
