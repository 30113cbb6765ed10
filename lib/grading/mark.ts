import type { Note, Part } from './grade';
import type { NoteCode } from './note-codes';

/** A piece of a part's full marks, and why it was won or lost. */
export interface Mark {
  code: NoteCode;
  values: Note['values'];
  /** Share of the part's full marks won (+) or lost (−) by it. */
  share: number;
  /** Most that it could have brought, where it could bring something. */
  most?: number;
}

/** Share of a part's full marks, 0…1. */
export function shareOf(marks: readonly Mark[]): number {
  return marks.reduce((sum, { share }) => sum + share, 0);
}

/**
 * Marks in points of the part's weight, to a tenth. Each is rounded together with those before it, so that the points of the
 * notes sum to the part's to the last tenth.
 */
export function notesOf(part: Part, marks: readonly Mark[], weight: number): Note[] {
  let [sum, given] = [0, 0];
  return marks.map(({ code, values, share, most }) => {
    sum += share;
    const reached = inTenths(sum * weight);
    const points = (reached - given) / 10;
    given = reached;
    const outOf = most !== undefined && { outOf: inTenths(most * weight) / 10 };
    return { part, code, values: { ...values, ...outOf }, points };
  });
}

/** Points of a part: the sum of its notes. */
export function pointsOf(notes: readonly Note[], part: Part): number {
  const own = notes.filter((note) => note.part === part);
  return inTenths(own.reduce((sum, { points = 0 }) => sum + points, 0)) / 10;
}

function inTenths(points: number): number {
  // What binary fractions lose must not decide which way a half is rounded.
  return Math.round(points * 10 + 1e-9);
}
