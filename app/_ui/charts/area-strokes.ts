import { type SymbolType, symbolCircle, symbolCross, symbolDiamond, symbolSquare, symbolTriangle } from 'd3-shape';
import type { Area } from '@/lib/areas';

/** How a line in a chart is told from the others without its colour. */
export interface Stroke {
  /** SVG dash array; empty for an unbroken line. */
  dash: string;
  marker: SymbolType;
  hollow: boolean;
}

/** One stroke an area, the same in every chart. */
export const AREA_STROKES: Readonly<Record<Area, Stroke>> = {
  'supply-side': { dash: '', marker: symbolCircle, hollow: false },
  priming: { dash: '9 4', marker: symbolSquare, hollow: false },
  'low-pressure-supply': { dash: '2 4', marker: symbolTriangle, hollow: false },
  filtration: { dash: '12 3 2 3', marker: symbolDiamond, hollow: false },
  'metering-control': { dash: '', marker: symbolCircle, hollow: true },
  'high-pressure': { dash: '6 3', marker: symbolSquare, hollow: true },
  returns: { dash: '3 3', marker: symbolTriangle, hollow: true },
  'electrical-sensing': { dash: '14 4', marker: symbolDiamond, hollow: true },
  fuel: { dash: '8 3 2 3 2 3', marker: symbolCross, hollow: false },
};
