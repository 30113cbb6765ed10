import type { Unit } from '../units';

/** What has a name in content or in the interface's words. */
export type Named =
  | 'rig'
  | 'element'
  | 'node'
  | 'port'
  | 'cause'
  /** How a cause comes about and what it does. */
  | 'cause-how'
  | 'repair'
  | 'check'
  | 'check-quantity'
  | 'gauge'
  | 'fuel'
  | 'topic'
  | 'condition'
  | 'area'
  | 'verdict'
  | 'comparison'
  | 'restoring'
  | 'spn'
  | 'fmi';

/** What stands in the place of a name in a line. */
export type Value =
  /** Printed as it is, or chosen by. */
  | number
  /** A code to choose words by; never words themselves. */
  | string
  /** Printed with so many decimals where it says; to three figures otherwise. */
  | { quantity: number; unit: Unit; decimals?: number }
  /** A number without a unit, printed with so many decimals. */
  | { number: number; decimals: number }
  /** `of`: the rig of an element, node or port; the check of one of its quantities; the cause of a repair. */
  | { name: Named; id: string; of?: string }
  | { list: readonly Value[] }
  | { line: Line };

/**
 * Something to be said. A generated question names a line of its kind's words and what fills it; a question that somebody
 * wrote holds Markdown; one that was marked keeps the words as they were said.
 */
export type Line = { say: string; with?: Readonly<Record<string, Value>> } | { markdown: string } | { text: string };
