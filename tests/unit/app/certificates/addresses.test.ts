import { expect, test } from 'vitest';
import { certificateAddress, holderAddress, idInAddress } from '@/app/_server/certificates/addresses';

test('somebody is one holder towards one organisation, another towards the next, and named by neither', () => {
  const [here, again, there] = [
    holderAddress('harbour', 'lea'),
    holderAddress('harbour', 'lea'),
    holderAddress('college', 'lea'),
  ];
  expect(here).toBe(again);
  expect(here).not.toBe(there);
  expect(here).not.toContain('lea');
  // RFC 9562, section 5.8: version 8, variant 10.
  expect(here).toMatch(/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
});

test('an id is found in our addresses alone', () => {
  expect(idInAddress(certificateAddress('3f9c2d7a'))).toBe('3f9c2d7a');
  expect(idInAddress('https://elsewhere.example/verify/3f9c2d7a')).toBeUndefined();
  expect(idInAddress(`${certificateAddress('')}a/b`)).toBeUndefined();
});
