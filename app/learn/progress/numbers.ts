/** An ability as it is shown: `+0.4`, `−1.2`, `0.0`. */
export function inLogits(ability: number): string {
  const tenths = Math.round(ability * 10);
  if (tenths === 0) return '0.0';
  return `${tenths > 0 ? '+' : '−'}${(Math.abs(tenths) / 10).toFixed(1)}`;
}

/** A share in whole hundredths. */
export function percent(share: number): number {
  return Math.round(100 * share);
}
