import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatRoles, parseRoles, roles } from '@/lib/accounts/roles';

test('roles are read back as they were stored, whatever the order they were given in', () => {
  fc.assert(
    fc.property(fc.shuffledSubarray([...roles]), (held) => {
      const read = parseRoles(formatRoles(held));
      expect(new Set(read)).toEqual(new Set(held));
      expect(formatRoles(read)).toBe(formatRoles(held));
    }),
  );
});

test('a role held twice is stored once', () => {
  expect(formatRoles(['learner', 'administrator', 'learner'])).toBe('learner,administrator');
});

test('nobody becomes anything by a word that is no role', () => {
  expect(parseRoles('owner,admin,Administrator,administrators, learner')).toEqual([]);
  expect(parseRoles('owner,learner')).toEqual(['learner']);
  expect(parseRoles('')).toEqual([]);
});

// The database looks for a role in the stored form by its name alone.
test('no role’s name is part of another’s', () => {
  for (const role of roles) expect(roles.filter((other) => other.includes(role))).toEqual([role]);
});
