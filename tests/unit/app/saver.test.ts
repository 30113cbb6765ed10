import { beforeEach, expect, test } from 'vitest';
import { Saver, type Saving } from '@/app/learn/sittings/[sittingId]/saver';

/** Answers of a server to one send after the other; `lost` where none comes. */
type Reply = 'done' | 'lost' | { error: string };

let chosen: string;
let sent: { option: string; key: string }[];
let told: string[];

beforeEach(() => {
  chosen = '';
  sent = [];
  told = [];
});

function aSaver(...replies: Reply[]): Saver {
  let keys = 0;
  return new Saver({
    has: new FormData(),
    read: () => {
      const form = new FormData();
      if (chosen) form.set('option', chosen);
      return form;
    },
    send: async (form) => {
      sent.push({ option: String(form.get('option')), key: String(form.get('key')) });
      await new Promise((resolve) => setTimeout(resolve, 5));
      const reply = replies.shift() ?? 'done';
      if (reply === 'lost') throw new TypeError('Failed to fetch');
      return reply === 'done' ? { done: true } : reply;
    },
    tell: (saving: Saving) => told.push(saving.is),
    newKey: () => `key-${++keys}`,
    pause: 10,
    again: [10, 20],
  });
}

function choose(saver: Saver, option: string): void {
  chosen = option;
  saver.look();
}

const until = async (met: () => boolean) => {
  for (let tries = 0; tries < 400 && !met(); tries++) await new Promise((resolve) => setTimeout(resolve, 5));
  expect(met()).toBe(true);
};

test('nothing is sent while nothing has changed', async () => {
  const saver = aSaver();
  saver.look();
  expect(await saver.save(false)).toBe('saved');
  expect(sent).toEqual([]);
});

test('what was chosen before there was a saver is a change like any other', async () => {
  chosen = 'a';
  const saver = aSaver();
  expect(saver.isUnsaved).toBe(true);
  saver.look();
  await until(() => told.includes('saved'));
  expect(sent).toEqual([{ option: 'a', key: 'key-1' }]);
});

test('a change is saved after a pause, the last of several quick ones alone', async () => {
  const saver = aSaver();
  choose(saver, 'a');
  choose(saver, 'b');
  expect(saver.isUnsaved).toBe(true);
  await until(() => told.includes('saved'));
  expect(sent).toEqual([{ option: 'b', key: 'key-1' }]);
  expect(saver.isUnsaved).toBe(false);
});

test('without a connection the same answer is tried again under the same key until it is stored', async () => {
  const saver = aSaver('lost', 'lost', 'lost', 'done');
  choose(saver, 'a');
  await until(() => told.includes('saved'));
  expect(sent).toEqual(Array.from({ length: 4 }, () => ({ option: 'a', key: 'key-1' })));
  expect(told.filter((is) => is === 'lost')).toHaveLength(3);
});

test('what is changed while the connection is lost is what is saved in the end, under a key of its own', async () => {
  const saver = aSaver('lost');
  choose(saver, 'a');
  await until(() => told.includes('lost'));
  choose(saver, 'b');
  await until(() => told.includes('saved'));
  expect(sent.at(-1)).toEqual({ option: 'b', key: 'key-2' });
  expect(saver.isUnsaved).toBe(false);
});

test('a change while a send is under way is sent after it, never beside it', async () => {
  const saver = aSaver();
  choose(saver, 'a');
  const first = saver.save(false);
  choose(saver, 'b');
  expect(await first).toBe('saved');
  expect(saver.isUnsaved).toBe(true);
  await until(() => sent.length === 2);
  await until(() => !saver.isUnsaved);
  expect(sent.map(({ option }) => option)).toEqual(['a', 'b']);
});

test('half an answer is refused and not tried again until it changes', async () => {
  const saver = aSaver({ error: 'Not stored.' });
  choose(saver, 'a');
  await until(() => told.includes('refused'));
  saver.look();
  await new Promise((resolve) => setTimeout(resolve, 60));
  expect(sent).toHaveLength(1);
  expect(saver.isUnsaved).toBe(true);
  choose(saver, 'b');
  await until(() => told.includes('saved'));
});

test('somebody who asks is answered, though nothing has changed', async () => {
  const saver = aSaver({ error: 'Nothing is answered yet.' });
  expect(await saver.save(true)).toBe('refused');
  expect(sent).toHaveLength(1);
});

test('whoever leaves stops the tries', async () => {
  const saver = aSaver('lost');
  choose(saver, 'a');
  await until(() => told.includes('lost'));
  saver.stop();
  await new Promise((resolve) => setTimeout(resolve, 60));
  expect(sent).toHaveLength(1);
});
