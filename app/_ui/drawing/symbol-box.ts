import type { Point } from '@/lib/rig/drawing';
import type { ElementKind } from '@/lib/rig/element';

/** Left, top, right and bottom. */
export type Box = readonly [number, number, number, number];

export type SymbolKind = ElementKind | 'screen';

/** What each symbol covers, around its origin and unturned. */
export const SYMBOL_BOX: Partial<Record<SymbolKind, Box>> = {
  tank: [-42, -36, 42, 36],
  filter: [-26, -26, 26, 26],
  orifice: [-24, -14, 24, 14],
  screen: [-24, -16, 24, 16],
  'cooling-plate': [-32, -20, 32, 20],
  'check-valve': [-14, -12, 14, 12],
  'lift-pump': [-24, -24, 24, 34],
  'gear-pump': [-24, -24, 24, 24],
  'high-pressure-pump': [-28, -28, 28, 28],
  'pressure-regulator': [-14, -24, 14, 14],
  'relief-valve': [-14, -24, 14, 14],
  'pressure-control-valve': [-14, -28, 14, 14],
  'metering-valve': [-14, -26, 14, 26],
  rail: [-100, -12, 100, 12],
  'rail-sensor': [-16, -14, 16, 30],
  injectors: [-80, 0, 82, 44],
  'air-leak': [-8, -11, 8, 11],
  'outside-leak': [-8, -11, 8, 30],
};

/** What a symbol covers on the sheet once it stands at its place; `turn` in degrees clockwise. */
export function turnedBox([left, top, right, bottom]: Box, [x, y]: Point, turn: number): Box {
  switch (turn) {
    case 90:
      return [x - bottom, y + left, x - top, y + right];
    case 180:
      return [x - right, y - bottom, x - left, y - top];
    case 270:
      return [x + top, y - right, x + bottom, y - left];
    default:
      return [x + left, y + top, x + right, y + bottom];
  }
}
