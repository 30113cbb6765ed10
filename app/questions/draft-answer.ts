import type { ReactNode } from 'react';

/** What is wrong with one field of the editor, by the field's path with dots. */
export interface FieldFault {
  at: string;
  text: string;
}

/** What comes of a draft: a sentence that says what was wrong, with what is wrong at which field; that it is kept; how it looks. */
export type DraftAnswer =
  | { error: string }
  | { error: string; faults: readonly FieldFault[] }
  | { saved: true }
  | { shown: ReactNode };
