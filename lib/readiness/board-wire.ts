import { decisions } from '../competency/decision';
import type { BoardCell, BoardPerson } from './board';
import { type Missing, missings } from './missing';

/** A person as they are sent: five hundred of them with thirteen topics are thousands of cells. */
export interface WirePerson extends Omit<BoardPerson, 'decision' | 'cells'> {
  /** Place among `decisions`. */
  decision: number;
  /** A word a cell: `r` or what is missing as a letter, the chance in thousandths, responses, cases, days until it changes. */
  cells: string;
}

const LETTERS: Record<Missing, string> = { weak: 'w', untested: 'u', 'too-few': 'f', 'too-old': 'o', undecided: 'd' };

export function packedPeople(people: readonly BoardPerson[]): WirePerson[] {
  return people.map(({ decision, cells, ...rest }) => ({
    ...rest,
    decision: decisions.indexOf(decision),
    cells: cells.map(cellText).join(' '),
  }));
}

/** @throws RangeError for text that `packedPeople` did not make. */
export function unpackedPeople(people: readonly WirePerson[]): BoardPerson[] {
  return people.map(({ decision, cells, ...rest }) => ({
    ...rest,
    decision: decisions[decision] ?? 'not-enough-evidence',
    cells: cells === '' ? [] : cells.split(' ').map(cellFrom),
  }));
}

function cellText({ missing, chance, responses, cases, changesIn }: BoardCell): string {
  const letter = missing ? LETTERS[missing] : 'r';
  return `${letter}${Math.round(chance * 1000)}.${responses}.${cases}.${changesIn ?? ''}`;
}

function cellFrom(text: string): BoardCell {
  const parts = /^([rwufod])(\d+)\.(\d+)\.(\d+)\.(\d*)$/.exec(text);
  if (!parts) throw new RangeError(`No cell of a board: ${text}`);
  const [, letter, thousandths, responses, cases, days] = parts;
  const missing = missings.find((one) => LETTERS[one] === letter);
  return {
    decision: !missing ? 'ready' : missing === 'weak' ? 'not-yet' : 'not-enough-evidence',
    ...(missing && { missing }),
    chance: Number(thousandths) / 1000,
    responses: Number(responses),
    cases: Number(cases),
    changesIn: days === '' ? null : Number(days),
  };
}
