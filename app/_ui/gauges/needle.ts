/** A needle that stands, or swings about where it stands by `flutter` either way, or rests on a stop. */
export type Pointer = { at: number; flutter?: number | undefined } | { stop: 'low' | 'high' };

const CENTRE = { x: 130, y: 130 };
const TIP = 87;

/** The scale runs clockwise from lower left over 270°. */
const START = 135;
const SWEEP = 270;
/** How far past the last mark the pointer's stop stands, degrees. */
const STOP = 7;

interface Range {
  min: number;
  max: number;
}

/** Direction of a value on the dial, degrees clockwise from the right. */
export function angleOf(value: number, { min, max }: Range): number {
  return START + (SWEEP * (value - min)) / (max - min);
}

export function pointerAngle(pointer: Pointer, range: Range): number {
  if ('at' in pointer) return angleOf(pointer.at, range);
  return pointer.stop === 'low' ? START - STOP : START + SWEEP + STOP;
}

/** How far a needle swings either way, as far as its stops let it; undefined when it stands still. */
export function swingOf(pointer: Pointer, range: Range): { from: number; to: number } | undefined {
  if (!('at' in pointer) || !pointer.flutter) return undefined;
  const [from, to] = [pointer.at - pointer.flutter, pointer.at + pointer.flutter];
  return {
    from: Math.max(START - STOP, angleOf(from, range)),
    to: Math.min(START + SWEEP + STOP, angleOf(to, range)),
  };
}

/** A slender triangle with a short tail, so that its tip tells half divisions apart. */
export function needlePath(angle: number): string {
  return `M${point(angle, TIP)}L${point(angle + 90, 3)}L${point(angle + 180, 26)}L${point(angle - 90, 3)}Z`;
}

/** What a swinging needle sweeps over. */
export function sectorPath(from: number, to: number): string {
  const wide = to - from > 180 ? 1 : 0;
  return `M${CENTRE.x} ${CENTRE.y}L${point(from, TIP)}A${TIP} ${TIP} 0 ${wide} 1 ${point(to, TIP)}Z`;
}

export function point(degrees: number, radius: number): string {
  return polar(degrees, radius).join(' ');
}

/** Hundredths of a unit: enough for the eye, and the same text in every process. */
export function polar(degrees: number, radius: number): [number, number] {
  const radians = (degrees * Math.PI) / 180;
  return [
    Number((CENTRE.x + radius * Math.cos(radians)).toFixed(2)),
    Number((CENTRE.y + radius * Math.sin(radians)).toFixed(2)),
  ];
}
