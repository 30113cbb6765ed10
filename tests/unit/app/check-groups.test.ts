import { expect, test } from 'vitest';
import { checkGroup, inGroups } from '@/app/_server/check-groups';
import { rigChoices } from '@/app/_server/rig-choices';
import { loadCatalogue } from '@/content/load';

test.each([
  [['V1'], 'suction'],
  [['T1'], 'suction'],
  [['G1', 'F1'], 'low'],
  [['R4'], 'returns'],
  [['H1'], 'looking'],
  [['E3'], 'electrical'],
  [['D1'], 'data'],
  [['Z9'], 'other'],
  [[], 'other'],
] as const)('a check at %s is found under %s', (ports, group) => {
  expect(checkGroup(ports)).toBe(group);
});

test('on every rig each check stands in one area of work, and none has to be looked for elsewhere', () => {
  const catalogue = loadCatalogue();
  for (const rig of catalogue.rigs.values()) {
    const { checks } = rigChoices(rig, catalogue);
    const groups = inGroups(checks);
    expect(groups.flatMap(({ items }) => items).map(({ id }) => id)).toHaveLength(checks.length);
    expect(groups.map(({ group }) => group)).not.toContain('other');
    for (const { items } of groups) expect(items.length).toBeGreaterThan(0);
  }
});
