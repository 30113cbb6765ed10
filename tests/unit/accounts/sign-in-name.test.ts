import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addressFrom,
  formatUserName,
  isHandle,
  isShortName,
  shownName,
  storedAddress,
  takesMail,
} from '@/lib/accounts/sign-in-name';

const signs = 'abcxyz019';
const word = fc.string({ unit: fc.constantFrom(...signs), minLength: 2, maxLength: 9 });
const handles = fc
  .tuple(fc.array(word, { minLength: 1, maxLength: 3 }), fc.constantFrom('.', '-'))
  .map(([words, between]) => words.join(between));
const slugs = fc.array(word, { minLength: 1, maxLength: 3 }).map((words) => words.join('-'));
const mails = fc
  .tuple(handles, slugs, fc.constantFrom('example', 'example.org'))
  .map(([box, host, top]) => `${box}@${host}.${top}`);

describe('a user name', () => {
  test('is shown as it was before it was stored', () => {
    fc.assert(
      fc.property(handles, slugs, (handle, slug) => {
        const name = formatUserName({ handle, slug });
        expect(shownName(storedAddress(name))).toBe(name);
        expect(takesMail(storedAddress(name))).toBe(false);
      }),
    );
  });

  test('is another with another handle or in another organisation', () => {
    fc.assert(
      fc.property(handles, slugs, handles, slugs, (handle, slug, other, elsewhere) => {
        const same = addressFrom(handle, slug) === addressFrom(other, elsewhere);
        expect(same).toBe(handle === other && slug === elsewhere);
      }),
    );
  });

  test('gives the address that signing in with it looks for', () => {
    fc.assert(
      fc.property(handles, slugs, (handle, slug) => {
        const address = addressFrom(handle, slug);
        expect(address).toBe(storedAddress(` ${handle.toUpperCase()}@${slug} `));
      }),
    );
  });
});

describe('an e-mail', () => {
  test('is stored and shown as it is, in small letters', () => {
    fc.assert(
      fc.property(mails, slugs, (mail, slug) => {
        expect(storedAddress(` ${mail.toUpperCase()}\n`)).toBe(mail);
        expect(addressFrom(mail.toUpperCase(), slug)).toBe(mail);
        expect(shownName(mail)).toBe(mail);
        expect(takesMail(mail)).toBe(true);
      }),
    );
  });
});

test('storing what is stored already changes nothing', () => {
  fc.assert(
    fc.property(
      fc.oneof(
        mails,
        fc.tuple(handles, slugs).map(([handle, slug]) => `${handle}@${slug}`),
      ),
      (name) => {
        expect(storedAddress(storedAddress(name))).toBe(storedAddress(name));
      },
    ),
  );
});

describe('at Harrow Bay', () => {
  test.each([
    ['kit', 'kit@harrow-bay.invalid'],
    [' Kit.Larsen ', 'kit.larsen@harrow-bay.invalid'],
    ['42', '42@harrow-bay.invalid'],
    ['Kit@Harrow-Bay', 'kit@harrow-bay.invalid'],
    ['kit@harrow.example', 'kit@harrow.example'],
    ['kit+shop@mail.harrow.example', 'kit+shop@mail.harrow.example'],
    ["o'brien@harrow.example", "o'brien@harrow.example"],
    ['jörg@harrow.example', 'jörg@harrow.example'],
  ])('%j signs in as %s', (typed, address) => {
    expect(addressFrom(typed, 'harrow-bay')).toBe(address);
  });

  test.each([
    ['nothing', ''],
    ['one sign', 'k'],
    ['too long a handle', 'k'.repeat(33)],
    ['a space', 'kit larsen'],
    ['dots on end', 'kit..larsen'],
    ['a dash first', '-kit'],
    ['a dot last', 'kit.'],
    ['other letters', 'jörg'],
    ['a mark-up', '<b>kit</b>'],
    ['another organisation’s short name', 'kit@hill-college'],
    ['a short name and no handle', '@harrow-bay'],
    ['a handle and no short name', 'kit@'],
    ['the stored form', 'kit@harrow-bay.invalid'],
    ['a domain that gets no mail', 'kit@mail.invalid'],
    ['two of the sign @', 'kit@harrow@bay.example'],
    ['a space in an e-mail', 'kit larsen@harrow.example'],
    ['a line in an e-mail', 'kit@harrow.example\nbcc: all@harrow.example'],
    ['a name around an e-mail', 'Kit <kit@harrow.example>'],
    ['two e-mails', 'kit@harrow.example,lea@harrow.example'],
    ['an empty part of a domain', 'kit@harrow..example'],
    ['a sign that nobody sees', 'kit\u0000@harrow.example'],
    ['a sign that turns the line', 'kit\u202e@harrow.example'],
    ['a sign of no width', 'kit\u200b@harrow.example'],
    ['too long an e-mail', `${'k'.repeat(187)}@harrow.example`],
  ])('nobody signs in with %s', (_, typed) => {
    expect(addressFrom(typed, 'harrow-bay')).toBeUndefined();
  });
});

test('the longest that is taken is 200 signs', () => {
  const mail = `${'k'.repeat(185)}@harrow.example`;
  expect(mail).toHaveLength(200);
  expect(addressFrom(mail, 'harrow-bay')).toBe(mail);
});

test.each([
  ['kit', true, true],
  ['kit-larsen', true, true],
  ['kit.larsen', true, false],
  ['k'.repeat(32), true, true],
  ['k'.repeat(33), false, false],
  ['k', false, false],
  ['Kit', false, false],
  ['kit_larsen', false, false],
  ['kit--larsen', false, false],
  ['kit\n', false, false],
])('%j as a handle: %s, as a short name: %s', (text, handle, shortName) => {
  expect(isHandle(text)).toBe(handle);
  expect(isShortName(text)).toBe(shortName);
});
