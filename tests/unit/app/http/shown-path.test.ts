import { expect, test } from 'vitest';
import { shownPath } from '@/app/_server/http/shown-path';

test.each([
  ['/', '/'],
  ['/learn/cases/4f', '/learn/cases/4f'],
  ['/learn?code=T4K', '/learn'],
  ['/learn#code', '/learn'],
  ['/join', '/join'],
  ['/join/', '/join/'],
  ['/people/set-upper/x', '/people/set-upper/x'],
  ['/caf%C3%A9', '/caf%C3%A9'],
  ['/%', '/%'],
])('%s is logged as %s', (url, shown) => {
  expect(shownPath(url)).toBe(shown);
});

test.each([
  '/invited/HUSH',
  '/reset/HUSH?from=mail',
  '/set-up/HUSH/',
  '/join/HUSH',
  '/join/HUSH.rsc',
  '/join/x/HUSH',
  '//join/HUSH',
  '/join//HUSH',
  '/join\\HUSH',
  '/Join/HUSH',
  '/%6Aoin/HUSH',
  '/join%2FHUSH',
  '/en/join/HUSH',
])('what stands behind the door in %s is not logged', (url) => {
  expect(shownPath(url)).not.toContain('HUSH');
  expect(shownPath(url)).toMatch(/\/…$/);
});

test('a path is logged up to 200 characters', () => {
  expect(shownPath(`/${'x'.repeat(5000)}`)).toHaveLength(200);
});
