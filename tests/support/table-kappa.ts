/**
 * Weighted kappa of a table of counts and its standard error, as Fleiss, Cohen & Everitt 1969 write them, with weights of
 * agreement 1 − difference / largest difference.
 */
export function tableKappa(
  counts: readonly (readonly number[])[],
  difference: (one: number, other: number) => number,
): [kappa: number, standardError: number] {
  const levels = [...counts.keys()];
  const total = counts.flat().reduce((sum, count) => sum + count, 0);
  const most = Math.max(...levels.flatMap((one) => levels.map((other) => difference(one, other))));
  const weight = (one: number, other: number) => 1 - difference(one, other) / most;
  const share = (one: number, other: number) => (counts[one]?.[other] ?? 0) / total;
  const over = (of: (level: number) => number) => levels.reduce((sum, level) => sum + of(level), 0);
  const row = (one: number) => over((other) => share(one, other));
  const column = (other: number) => over((one) => share(one, other));
  const cells = (of: (one: number, other: number) => number) => over((one) => over((other) => of(one, other)));
  const seen = cells((one, other) => share(one, other) * weight(one, other));
  const chance = cells((one, other) => row(one) * column(other) * weight(one, other));
  const kappa = (seen - chance) / (1 - chance);
  const rowWeight = (one: number) => over((other) => column(other) * weight(one, other));
  const columnWeight = (other: number) => over((one) => row(one) * weight(one, other));
  const square = cells(
    (one, other) =>
      share(one, other) * (weight(one, other) - (rowWeight(one) + columnWeight(other)) * (1 - kappa)) ** 2,
  );
  const variance = (square - (kappa - chance * (1 - kappa)) ** 2) / (total * (1 - chance) ** 2);
  return [kappa, Math.sqrt(variance)];
}
