import type { Shown, ShownLine } from '../checks/shown';
import type { Verdict } from '../checks/verdict';
import type { ConditionId } from '../rig/condition';
import type { TroubleCode } from '../symptoms/work-order';
import type { Line } from './line';

/** Something on a rig's drawing that can be pointed at. */
export interface Target {
  /** Unique within its question. */
  id: string;
  what: 'element' | 'node' | 'port';
  /** Id in the rig. */
  of: string;
}

/** What an instrument showed in a check, with its ids. */
export interface ShownReading {
  check: string;
  condition: ConditionId;
  /** Id of the gauge. */
  instrument: string;
  shown: Shown;
  /** Where the reading is given with what it is held against: a line of the rig's limit sheet, by its id. */
  judged?: { rig: string; limit: string; verdict: Verdict };
}

/** A stretch of a trace, seconds from its start. */
export interface Stretch {
  id: string;
  from: number;
  to: number;
}

/** What a question shows beside its words, as data. None of it may tell the key. */
export type Figure =
  | {
      figure: 'drawing';
      rig: string;
      /** Marked with a ring and a letter. */
      marked: readonly Target[];
      /** Whether the names of the parts are written beside them. */
      names: boolean;
      ports: boolean;
    }
  /** One instrument, large enough to read. */
  | { figure: 'instrument'; instrument: string; shown: Shown }
  | {
      figure: 'trace';
      instrument: string;
      lines: readonly ShownLine[];
      stretches: readonly Stretch[];
      /** What the first of the lines does without a fault, at a few times. */
      sound?: ShownLine;
    }
  | { figure: 'readings'; readings: readonly ShownReading[] }
  | { figure: 'codes'; codes: readonly TroubleCode[] }
  /** Lines of a rig's limit sheet, by their ids; all of them where none are named. */
  | { figure: 'limits'; rig: string; limits?: readonly string[] }
  /** What one would see on the spot, fact by fact; `at` on the rig's drawing. */
  | { figure: 'scene'; rig: string; at?: Target; facts: readonly Line[] }
  | { figure: 'table'; head: readonly Line[]; rows: readonly (readonly Line[])[] }
  /** An uploaded picture. */
  | { figure: 'picture'; picture: string; width: number; height: number; alt: string };
