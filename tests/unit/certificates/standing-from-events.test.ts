import { expect, test } from 'vitest';
import { type CertificateEvent, standingFromEvents } from '@/lib/certificates/standing-from-events';

type Kind = CertificateEvent['kind'];

test.each<[Kind[], string]>([
  [[], 'in-force'],
  [['consent'], 'in-force'],
  [['suspended'], 'suspended'],
  [['suspended', 'consent'], 'suspended'],
  [['suspended', 'lifted'], 'in-force'],
  [['suspended', 'lifted', 'suspended'], 'suspended'],
  [['suspended', 'revoked'], 'revoked'],
  [['revoked', 'lifted'], 'revoked'],
  [['superseded', 'suspended'], 'superseded'],
])('after %j a certificate is %s', (kinds, code) => {
  expect(standingFromEvents(kinds.map((kind) => ({ kind, reason: '' }))).code).toBe(code);
});

test('the reason is that of what counts', () => {
  const events = [
    { kind: 'suspended', reason: 'first' },
    { kind: 'lifted', reason: 'heard' },
    { kind: 'suspended', reason: 'second' },
  ] as const;
  expect(standingFromEvents(events)).toEqual({ code: 'suspended', reason: 'second' });
});
