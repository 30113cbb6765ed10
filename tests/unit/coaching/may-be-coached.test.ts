import { expect, test } from 'vitest';
import { mayBeCoached, purposes } from '@/lib/coaching/may-be-coached';

test('practice may be coached, and nothing else', () => {
  expect(purposes.filter(mayBeCoached)).toEqual(['practice']);
});
