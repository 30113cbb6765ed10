import { decodeList } from '@digitalbazaar/vc-bitstring-status-list';
import { expect, test } from 'vitest';
import { decodedList, encodedList, LEAST_PLACES, statusAt } from '@/lib/certificates/status-list';

// W3C Bitstring Status List 1.0, the example list of section 2.2 (seen in w3c/vc-bitstring-status-list, index.html).
const ofTheStandard = 'uH4sIAAAAAAAAA-3BMQEAAADCoPVPbQwfoAAAAAAAAAAAAAAAAAAAAIC3AYbSVKsAQAAA';
// 1EdTech/digital-credentials-public-validator, ob30/bit-string-list/testlist (seen): a badge at place 23 counts as revoked.
const ofTheValidator = 'uH4sIAAAAAAAA_-3BMQEAAAzDoMy_6cnoA9QFAAAAAAAAAAAAAAAAAAAAbD3uPa2cAEAAAA';

function placesIn(encoded: string): number[] {
  const bits = decodedList(encoded) ?? new Uint8Array();
  expect(bits).toHaveLength(LEAST_PLACES / 8);
  return Array.from({ length: LEAST_PLACES }, (_, place) => place).filter((place) => statusAt(bits, place));
}

test('the list that the standard prints has 131,072 places, none of them set', () => {
  expect(placesIn(ofTheStandard)).toEqual([]);
});

test('the list of the official validator says of place 23 what its own test says', () => {
  expect(placesIn(ofTheValidator)).toContain(23);
});

test('another library reads the same places in our list', async () => {
  const set = [0, 9, 94_567, LEAST_PLACES - 1];
  const list = await decodeList({ encodedList: encodedList(set) });
  const found = Array.from({ length: list.length }, (_, place) => place).filter((place) => list.getStatus(place));
  expect(found).toEqual(set);
});
