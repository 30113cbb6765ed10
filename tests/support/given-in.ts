import type { Line } from '@/lib/questions/line';

/** Reads the numbers that lines print, as they are printed, by the name they have in there. */
export function givenIn(lines: readonly Line[]): (name: string) => number {
  return (name) => {
    for (const line of lines) {
      const value = 'say' in line ? line.with?.[name] : undefined;
      if (typeof value === 'number') return value;
      if (typeof value !== 'object') continue;
      if ('quantity' in value && value.decimals !== undefined) return Number(value.quantity.toFixed(value.decimals));
      if ('number' in value) return Number(value.number.toFixed(value.decimals));
    }
    throw new Error(`No line prints ${name}`);
  };
}
