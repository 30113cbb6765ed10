/** Logits as a screen shows them: two digits, a true minus. */
export function logits(value: number): string {
  return value.toFixed(2).replace('-', '−');
}
