import type { Place } from '@/lib/rig/drawing';
import type { RigElement } from '@/lib/rig/element';

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
