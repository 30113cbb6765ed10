import type { Place } from '@/lib/rig/drawing';
import type { RigElement } from '@/lib/rig/element';
import type { Box } from './symbol-box';

export type Label = NonNullable<Extract<Place, { at: unknown }>['label']>;

/** From one line of a label to the next. */
export const LINE_HEIGHT = 16;

/** The lines that stand beside a part: its name, and what a filter holds back. */
export function labelLines(element: RigElement, label: Label): { name: readonly string[]; rating?: string } {
  return {
    name: label.lines ?? [element.text.en],
    ...(element.kind === 'filter' && { rating: `${element.ratingUm} µm` }),
  };
}

/** Letters are at most about this wide on average, in the sheet’s type at 15.5 units: measured, and rounded up. */
const LETTER_WIDTH = 8;
const ASCENT = 12;
const DESCENT = 4;

/** What a label covers on the sheet. */
export function labelBox(element: RigElement, label: Label): Box {
  const { name, rating } = labelLines(element, label);
  const lines = rating === undefined ? name : [...name, rating];
  const width = LETTER_WIDTH * Math.max(...lines.map((line) => line.length));
  const left = label.at[0] - { start: 0, middle: width / 2, end: width }[label.anchor];
  return [left, label.at[1] - ASCENT, left + width, label.at[1] + LINE_HEIGHT * (lines.length - 1) + DESCENT];
}
