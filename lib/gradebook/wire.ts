import { type Book, type Cell, cellStates } from './book';

/** A book as it is sent: five hundred people and sixty assignments are thirty thousand cells. */
export interface WireBook {
  assignments: Book['assignments'];
  /** Each person's cells as text, behind one another: the state's letter, `l` where late, and the total in tenths. */
  people: readonly { id: string; name: string; classes: readonly string[]; cells: string }[];
}

const LETTERS = 'abcdefg';

export function packed({ assignments, people }: Book): WireBook {
  return {
    assignments,
    people: people.map(({ cells, ...rest }) => ({ ...rest, cells: cells.map(cellText).join('') })),
  };
}

/** @throws RangeError for text that `packed` did not make. */
export function unpacked({ assignments, people }: WireBook): Book {
  return {
    assignments,
    people: people.map(({ cells, ...rest }) => ({ ...rest, cells: cellsOf(cells) })),
  };
}

function cellText({ state, total, late }: Cell): string {
  return `${LETTERS[cellStates.indexOf(state)]}${late ? 'l' : ''}${total === null ? '' : Math.round(total * 10)}`;
}

function cellsOf(text: string): Cell[] {
  return [...text.matchAll(/([a-g])(l?)(\d*)/g)].map(([, letter = '', late, tenths]) => {
    const state = cellStates[LETTERS.indexOf(letter)];
    if (!state) throw new RangeError(`No state of a cell: ${letter}`);
    return { state, late: late === 'l', total: tenths ? Number(tenths) / 10 : null };
  });
}
