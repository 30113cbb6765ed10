import ui from '@/app/_ui/ui.module.css';
import type { Cell, CellState } from '@/lib/gradebook/book';
import styles from './gradebook.module.css';

export interface CellWords {
  states: Readonly<Record<CellState, string>>;
  late: string;
}

const signs: Partial<Record<CellState, string>> = { 'not-given': '·', 'not-begun': '–' };

/** What stands in a cell: the total, or a sign for where somebody is, with its words for those who do not see it. */
export function BookCell({ cell: { state, total, late }, words }: { cell: Cell; words: CellWords }) {
  const sign = signs[state];
  return (
    <>
      {total !== null && <span className={styles.total}>{total.toFixed(0)}</span>}
      {sign && <span aria-hidden="true">{sign}</span>}
      {state !== 'done' && <span className={sign ? ui.unseen : styles.state}>{words.states[state]}</span>}
      {late && <span className={styles.state}>{words.late}</span>}
    </>
  );
}
