import type { ReactNode } from 'react';
import type { FieldFault } from '@/app/questions/draft-answer';

/**
 * What comes of a set that is being built: a sentence that says what was wrong, with what is wrong at which field; that
 * it is kept; how a task of it looks; what it is made of, with what can never be drawn.
 */
export type SetAnswer =
  | { error: string; faults?: readonly FieldFault[] }
  | { saved: true }
  | { shown: ReactNode }
  | { holding: ReactNode; faults: readonly FieldFault[] };
