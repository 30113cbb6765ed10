import pino from 'pino';
import { afterEach, expect, test } from 'vitest';
import { asRequest, sendConsoleToLog } from '@/app/_server/http/console-log';
import { logOptions } from '@/app/_server/log';

const { error, warn, log } = console;
afterEach(() => {
  Object.assign(console, { error, warn, log });
});

/** What is logged of what `run` prints. */
async function logged(run: () => Promise<void> | void): Promise<Record<string, unknown>[]> {
  const lines: Record<string, unknown>[] = [];
  sendConsoleToLog(pino(logOptions, { write: (line: string) => lines.push(JSON.parse(line)) }));
  await run();
  return lines;
}

test('an error that is printed while a request is answered is logged with the request’s id', async () => {
  const thrown = Object.assign(new RangeError('no such port'), { digest: '4711' });
  const lines = await logged(() =>
    asRequest('one', async () => {
      await Promise.resolve();
      console.error('\u001b[31m⨯\u001b[39m', thrown);
    }),
  );
  expect(lines).toMatchObject([
    { level: 'error', id: 'one', msg: '⨯', err: { message: 'no such port', digest: '4711' } },
  ]);
});

test('requests that are answered at once are told apart', async () => {
  const lines = await logged(async () => {
    const answer = (id: string) =>
      asRequest(id, async () => {
        await new Promise((resolve) => setTimeout(resolve, 5));
        console.warn('slow %s', id);
      });
    await Promise.all([answer('one'), answer('other')]);
  });
  expect(lines).toMatchObject([
    { level: 'warn', id: 'one', msg: 'slow one' },
    { level: 'warn', id: 'other', msg: 'slow other' },
  ]);
});

test('what is printed outside of any request has no id', async () => {
  const [line] = await logged(() => console.log('ready in %d ms', 3));
  expect(line).toMatchObject({ level: 'info', msg: 'ready in 3 ms' });
  expect(line).not.toHaveProperty('id');
});
