/** Areas of work, in the order of the list of checks. */
export const checkGroups = ['suction', 'low', 'returns', 'looking', 'electrical', 'data', 'other'] as const;
export type CheckGroup = (typeof checkGroups)[number];

/** The letter of a port says what kind of place it is, on every rig. */
const BY_LETTER: Readonly<Record<string, CheckGroup>> = {
  T: 'suction',
  V: 'suction',
  S: 'suction',
  G: 'low',
  F: 'low',
  R: 'returns',
  A: 'looking',
  H: 'looking',
  E: 'electrical',
  D: 'data',
};

/** Where a check stands in the list: by the port it is hooked up to first. */
export function checkGroup([first = '']: readonly string[]): CheckGroup {
  return BY_LETTER[first.charAt(0)] ?? 'other';
}

/** Items by area of work, areas without any left out. */
export function inGroups<T extends { group: CheckGroup }>(items: readonly T[]): { group: CheckGroup; items: T[] }[] {
  return checkGroups
    .map((group) => ({ group, items: items.filter((item) => item.group === group) }))
    .filter((found) => found.items.length > 0);
}
