import { expect, test } from 'vitest';
import type { Line, Value } from '@/lib/questions/line';
import type { GeneratedQuestion } from '@/lib/questions/question';
import type { LimitLine } from '@/lib/rig/rig';
import { aRig } from '../../support/bench-rig';
import { expectSoundQuestions } from '../../support/sound-questions';

test('the key is the one line of the sheet for what was read, and no other option is', () => {
  const counts = { none: 0, offered: 0, all: 0 };
  expectSoundQuestions('which-limit', (question) => {
    const { limits } = aRig(question.rig);
    const { check, quantity, condition } = read(question.stem[0]);
    const due = limits.filter(
      (line) => line.check === check && line.quantity === quantity && line.condition === condition,
    );
    expect(due.length).toBeLessThanOrEqual(1);
    const { right, options } = keyed(question);
    for (const { id, line } of options)
      expect(id === right, id).toBe(due.length === 0 ? isNone(line) : is(line, due[0]));
    counts.all++;
    counts.none += due.length === 0 ? 1 : 0;
    counts.offered += options.some(({ line }) => isNone(line)) ? 1 : 0;
  });
  // Neither always right nor always wrong where it is offered.
  expect(counts.none).toBeGreaterThan(counts.all / 20);
  expect(counts.none).toBeLessThan(0.6 * counts.offered);
});

test('the part of the sheet that is shown has every line of what was read, as the sheet has it', () => {
  expectSoundQuestions(
    'which-limit',
    (question) => {
      const { limits } = aRig(question.rig);
      const { check, quantity } = read(question.stem[0]);
      const rows = question.figure?.figure === 'table' ? question.figure.rows : [];
      const shown = rows.map(([measured, condition, limit]) => [
        ...about(measured),
        idIn(condition, 'condition'),
        ends(limit),
      ]);
      const due = limits.filter((line) => line.check === check && line.quantity === quantity);
      for (const { condition, min, max, unit } of due)
        expect(shown).toContainEqual([check, quantity, condition, { min, max, unit }]);
      expect(rows.length).toBeGreaterThanOrEqual(due.length);
    },
    500,
  );
});

function read(line: Line | undefined) {
  const quantity = valueIn(line, 'quantity') as { id: string; of: string };
  return { check: quantity.of, quantity: quantity.id, condition: idIn(line, 'condition') };
}

function keyed({ answer, key }: GeneratedQuestion) {
  if (answer.form !== 'choice' || key.form !== 'choice') throw new Error('Nothing is to be chosen');
  expect(key.right.length).toBe(1);
  return { right: key.right[0], options: answer.options };
}

function isNone(line: Line): boolean {
  return 'say' in line && line.say === 'noLine';
}

function is(line: Line, limit: LimitLine | undefined): boolean {
  if (!limit || isNone(line)) return false;
  const [check, quantity] = about((valueIn(line, 'measured') as { line: Line }).line);
  const said = ends((valueIn(line, 'limit') as { line: Line }).line);
  const same = said.min === limit.min && said.max === limit.max && said.unit === limit.unit;
  return same && check === limit.check && quantity === limit.quantity && idIn(line, 'condition') === limit.condition;
}

function about(measured: Line | undefined): [string, string] {
  return [idIn(measured, 'check'), idIn(measured, 'quantity')];
}

function ends(limit: Line | undefined) {
  const number = (name: string) =>
    valueIn(limit, name) as { quantity?: number; number?: number; unit?: string } | undefined;
  const [min, max] = [number('min'), number('max')];
  return { min: min?.quantity ?? min?.number, max: max?.quantity, unit: max?.unit ?? min?.unit };
}

function idIn(line: Line | undefined, name: string): string {
  return (valueIn(line, name) as { id: string }).id;
}

function valueIn(line: Line | undefined, name: string): Value | undefined {
  return line && 'say' in line ? line.with?.[name] : undefined;
}
