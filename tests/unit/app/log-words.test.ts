import { createTranslator } from 'next-intl';
import { expect, test } from 'vitest';
import { logFields } from '@/app/log/parse-log-query';
import { settled } from '@/app/settings/parse-settings';
import messages from '@/content/messages/en.json';
import { logEvents } from '@/lib/accounts/log-events';
import { dateFormats } from '@/lib/accounts/settings';

test.each<[string, readonly string[], Record<string, unknown>]>([
  ['event of the log', logEvents, messages.log.events],
  ['event of the log, as a sentence', logEvents, messages.log.sentences],
  ['filter of the log', logFields, messages.log.fields],
  ['setting', settled, messages.settings.labels],
  ['use of a setting', settled, messages.settings.hints],
  ['date format', dateFormats, messages.settings.dateFormats],
  ['setting that will not do', settled.map((field) => `settings-${field}`), messages.problems],
])('every %s has words', (_, ids, words) => {
  expect(ids.length).toBeGreaterThan(0);
  expect(ids.filter((id) => !(id in words))).toEqual([]);
});

test('every sentence of the log names who did it or to whom, as their name is', () => {
  const t = createTranslator({ locale: 'en', messages, namespace: 'log.sentences' });
  for (const event of logEvents) {
    const told = t(event, { actor: '<b>Ada</b>', person: '{Ben}' });
    expect(told, event).toMatch(/<b>Ada<\/b>|\{Ben\}/);
    expect(told, event).toMatch(/^\S.*\.$/);
  }
});
