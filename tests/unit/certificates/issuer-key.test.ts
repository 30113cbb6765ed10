import { expect, test } from 'vitest';
import { keyInUse, publishedKeySet } from '@/lib/certificates/issuer-key';
import { aKey, DAY, ISSUED } from '../../support/certificates';

test('the key made last signs, unless it was retired or compromised', async () => {
  const first = await aKey({ madeAt: ISSUED });
  const second = await aKey({ madeAt: ISSUED + DAY });
  const keys = [first.key, second.key];
  expect(keyInUse(keys)).toBe(second.key);
  expect(keyInUse([first.key, { ...second.key, compromisedFrom: ISSUED }])).toBe(first.key);
  expect(keyInUse(keys.map((key) => ({ ...key, retiredAt: ISSUED + DAY })))).toBeUndefined();
});

test('the published set has retired keys, no compromised ones, and nothing of a private half', async () => {
  const [inUse, retired, compromised] = await Promise.all([
    aKey(),
    aKey({ retiredAt: ISSUED }),
    aKey({ compromisedFrom: ISSUED }),
  ]);
  const leaky = { ...inUse.key, jwk: inUse.jwk };
  const set = publishedKeySet([leaky, retired.key, compromised.key]);
  expect(set.keys.map(({ kid }) => kid)).toEqual([inUse.key.id, retired.key.id]);
  expect(JSON.stringify(set)).not.toContain(inUse.jwk.d);
});
