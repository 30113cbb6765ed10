import { DrizzleQueryError } from 'drizzle-orm/errors';
import { expect, test } from 'vitest';
import { errorForLog } from '@/app/_server/error-for-log';

test('a failed query is logged without the values that it was asked with', () => {
  const params = ['ada@shop.example', 'two lines\n    at home'];
  const thrown = new DrizzleQueryError(
    'insert into users values (?, ?)',
    params,
    new Error('UNIQUE constraint failed'),
  );
  expect(thrown.message).toContain('ada@shop.example');
  const logged = errorForLog(thrown);
  expect(JSON.stringify(logged)).not.toMatch(/ada@|two lines|at home/);
  expect(logged.message).toBe('Failed query: insert into users values (?, ?)');
  expect(logged.stack).toMatch(/error-for-log\.test/);
  expect(logged.cause?.message).toBe('UNIQUE constraint failed');
});

test('what an error carries besides is left out, but for what it is found by', () => {
  const thrown = Object.assign(new TypeError('no such port'), { digest: '4711', code: 'E_PORT', body: 'hush' });
  expect(errorForLog(thrown)).toEqual({
    type: 'TypeError',
    message: 'no such port',
    stack: thrown.stack,
    digest: '4711',
    code: 'E_PORT',
  });
});

test('something thrown that is no error may hold anything, and is not repeated', () => {
  expect(errorForLog('hush')).toEqual({ type: 'string', message: 'Not an error', stack: '' });
});
