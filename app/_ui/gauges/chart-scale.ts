export interface ChartScale {
  min: number;
  max: number;
  /** Between numbered lines of the grid. */
  major: number;
  /** Between all lines of the grid. */
  minor: number;
}

/** Steps that an eye divides without a pencil, each with the parts that its finer lines make of it. */
const STEPS = [
  { step: 1, parts: 5 },
  { step: 2, parts: 4 },
  { step: 5, parts: 5 },
  { step: 10, parts: 5 },
  // Where zero lies between the ends, rounding on either side may ask for one step more.
  { step: 20, parts: 4 },
] as const;

/** A scale that holds both ends, zero among them, in at most `most` numbered steps. */
export function chartScale(low: number, high: number, most: number): ChartScale {
  // A line along zero still gets some paper above it.
  const [from, to] = [Math.min(0, low), low === 0 && high === 0 ? 1 : Math.max(0, high)];
  const span = to - from;
  const power = 10 ** Math.floor(Math.log10(span / most));
  const fitting = STEPS.find(({ step }) => numbered(from, to, step * power) <= most) ?? STEPS[4];
  const major = tidy(fitting.step * power);
  return {
    min: tidy(Math.floor(from / major) * major),
    max: tidy(Math.ceil(to / major) * major),
    major,
    minor: tidy(major / fitting.parts),
  };
}

function numbered(from: number, to: number, step: number): number {
  return Math.ceil(to / step) - Math.floor(from / step);
}

/** Where the lines of the grid stand. */
export function gridLines({ min, max, major, minor }: ChartScale): { value: number; numbered: boolean }[] {
  const count = Math.round((max - min) / minor);
  const parts = Math.round(major / minor);
  // Counted from zero, so that the line along it stands there, and not a rounding away from it.
  const first = Math.round(min / minor);
  return Array.from({ length: count + 1 }, (_, i) => ({ value: tidy((first + i) * minor), numbered: i % parts === 0 }));
}

/** Place of a value on its scale, 0…1. */
export function onScale(value: number, { min, max }: ChartScale): number {
  return (value - min) / (max - min);
}

function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
