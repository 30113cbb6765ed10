/** A chance, 0…1, to two digits. What is not quite certain is not shown as if it were. */
export function shownChance(chance: number): string {
  if (chance >= 0.995) return '> 0.99';
  return chance < 0.005 ? '< 0.01' : chance.toFixed(2);
}
