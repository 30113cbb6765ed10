export interface Scale {
  major: number;
  minor: number;
}

export interface MarkPosition {
  /** The numbered mark at or below the pointer. */
  number: number;
  /** Whole small divisions past that number. */
  divisions: number;
  /** Whether it stands half a division further. */
  half: boolean;
}

/** Smaller than any share of a division that a pointer can show; takes up binary dust. */
const DUST = 1e-6;

/** Where a pointer stands, in the words of the scale: what an eye sees, not the value itself. */
export function markPosition(value: number, { major, minor }: Scale, min: number): MarkPosition {
  const number = min + Math.floor((value - min) / major + DUST) * major;
  const past = (value - number) / minor;
  const divisions = Math.floor(past + DUST);
  return { number: tidy(number), divisions, half: past - divisions > 0.25 };
}

/** All marks of a scale, each with its rank: 0 numbered, 1 half way between numbers, 2 smallest. */
export function scaleMarks({ major, minor }: Scale, { min, max }: { min: number; max: number }) {
  const perMajor = Math.round(major / minor);
  const count = Math.round((max - min) / minor);
  return Array.from({ length: count + 1 }, (_, i) => ({ value: tidy(min + i * minor), rank: rankOf(i, perMajor) }));
}

function rankOf(i: number, perMajor: number): 0 | 1 | 2 {
  if (i % perMajor === 0) return 0;
  return (2 * i) % perMajor === 0 ? 1 : 2;
}

function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
