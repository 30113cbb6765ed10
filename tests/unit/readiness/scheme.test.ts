import { describe, expect, test } from 'vitest';
import { loadCatalogue } from '@/content/load';
import { checkSchemes } from '@/lib/readiness/check-schemes';
import { schemeSchema } from '@/lib/readiness/scheme';
import { aScheme } from '../../support/competency-rows';

const half = { topic: 'filtration', share: 0.5, atLeast: 3 };

describe('a scheme', () => {
  test('has a blueprint whose shares sum to 1', () => {
    expect(schemeSchema.safeParse(aScheme({ blueprint: [half, { ...half, topic: 'fuel-quality' }] })).success).toBe(
      true,
    );
    expect(schemeSchema.safeParse(aScheme({ blueprint: [half] })).success).toBe(false);
  });

  test('names a topic once', () => {
    expect(schemeSchema.safeParse(aScheme({ blueprint: [half, half] })).success).toBe(false);
  });

  test('of the content stands on topics and a profile that there are', () => {
    const catalogue = loadCatalogue();
    const odd = aScheme({ blueprint: [{ topic: 'no-such', share: 1, atLeast: 0 }] });
    expect(checkSchemes(catalogue)).toEqual([]);
    expect(checkSchemes({ ...catalogue, schemes: new Map([[odd.id, odd]]) })).toHaveLength(2);
  });

  test('of the content is invented, and says so', () => {
    for (const { source } of loadCatalogue().schemes.values()) expect(source.kind).toBe('assumed');
  });

  // ISO/IEC 17024 is followed, nobody has looked whether it is kept: reference page, section 5, wording rule.
  test('never claims to be accredited', () => {
    for (const { text } of loadCatalogue().schemes.values()) expect(JSON.stringify(text)).not.toMatch(/accredit/i);
  });
});
