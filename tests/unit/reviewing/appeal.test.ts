import { expect, test } from 'vitest';
import { dueAt, isOverdue } from '@/lib/reviewing/appeal';
import { handleFrom } from '@/lib/reviewing/handle';
import { showsNames } from '@/lib/reviewing/naming';

const made = Date.UTC(2026, 2, 2, 10);

test('an appeal has to be answered within a fortnight', () => {
  const due = dueAt(made);
  expect(new Date(due).toISOString()).toBe('2026-03-16T10:00:00.000Z');
  expect(isOverdue('open', due, due)).toBe(false);
  expect(isOverdue('open', due, due + 1)).toBe(true);
  expect(isOverdue('declined', due, due + 1)).toBe(false);
});

test('names wait until nothing is taken any more and all is marked', () => {
  const endsAt = Date.UTC(2026, 2, 10, 10);
  expect(showsNames(false, { endsAt, unmarked: 3 }, made)).toBe(true);
  expect(showsNames(true, { endsAt, unmarked: 0 }, made)).toBe(false);
  expect(showsNames(true, { endsAt, unmarked: 1 }, endsAt + 1)).toBe(false);
  expect(showsNames(true, { endsAt, unmarked: 0 }, endsAt + 1)).toBe(true);
});

test('a handle is read out without doubt', () => {
  const handles = Array.from({ length: 256 }, (_, n) => handleFrom(Uint8Array.of(n, 255 - n, n, n, n)));
  for (const handle of handles) expect(handle).toMatch(/^[A-Z]{2} \d{3}$/);
  expect(handles.join('')).not.toMatch(/[BGIOQSUZ]/);
  expect(new Set(handles).size).toBeGreaterThan(200);
});
