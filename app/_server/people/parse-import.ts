import Papa from 'papaparse';
import { type Role, roles } from '@/lib/accounts/roles';
import { addressFrom, takesMail } from '@/lib/accounts/sign-in-name';
import { LONGEST_NAME } from '../entering/newcomer';

/** A year's intake fits; for more, everybody would wait long while their PINs are hashed. */
export const MOST_ROWS = 500;

export type RowFault =
  | 'name'
  | 'name-long'
  | 'sign-in-missing'
  | 'sign-in-both'
  | 'sign-in-name'
  | 'taken'
  | 'twice'
  | 'role'
  | 'role-given'
  | 'class'
  | 'class-several'
  | 'class-learner'
  | 'cells';

/** A row of a list of people, and what is wrong with it. */
export interface ImportRow {
  /** As a spreadsheet counts: the names of the columns are row 1. */
  row: number;
  name: string;
  /** As stored; empty where there is none. */
  address: string;
  roles: Role[];
  classId: string | undefined;
  className: string;
  faults: { fault: RowFault; value: string }[];
}

/** What a list is held against. */
export interface ImportKnown {
  slug: string;
  /** Those that go on. */
  classes: readonly { id: string; name: string }[];
  /** Roles that whoever imports may give. */
  rolesToGive: readonly Role[];
}

export type UnreadList =
  | { error: 'import-empty' }
  | { error: 'import-columns'; columns: string }
  | { error: 'import-columns-twice'; columns: string }
  | { error: 'import-unread'; row: number }
  | { error: 'import-long'; rows: number; most: number };

/** Columns by the names that stand over them, in small letters with single spaces. */
const columnNames = new Map([
  ['name', 'name'],
  ['email', 'email'],
  ['e mail', 'email'],
  ['user name', 'userName'],
  ['username', 'userName'],
  ['roles', 'roles'],
  ['role', 'roles'],
  ['class', 'class'],
] as const);
type Column = typeof columnNames extends ReadonlyMap<unknown, infer C> ? C : never;

/** What a list has for one person. */
interface Line {
  row: number;
  cells: Partial<Record<Column, string>>;
  /** What stands beyond the last column. */
  beyond: string;
}

/** Reads a list of people. Whether somebody signs in like that already is for the database to say (`markTaken`). */
export function parseImport(csv: string, known: ImportKnown): ImportRow[] | UnreadList {
  const { data, errors } = Papa.parse<string[]>(csv.replace(/^\uFEFF/, ''), { transform: (cell) => cell.trim() });
  // Empty lines count too, as they do in the spreadsheet that somebody looks a row up in.
  const [head, ...lines] = data.map((cells, index) => ({ row: index + 1, cells })).filter(isFilled);
  const columns = (head?.cells ?? []).map(columnOf);
  const refusal = refuseColumns(columns, head?.cells ?? []);
  if (refusal) return refusal;
  const broken = errors.find(({ type }) => type === 'Quotes');
  if (broken) return { error: 'import-unread', row: (broken.row ?? 0) + 1 };
  if (lines.length === 0) return { error: 'import-empty' };
  if (lines.length > MOST_ROWS) return { error: 'import-long', rows: lines.length, most: MOST_ROWS };
  return markTwice(lines.map(({ row, cells }) => rowFrom(lineFrom(row, cells, columns), known)));
}

function isFilled({ cells }: { cells: readonly string[] }): boolean {
  return cells.some((cell) => cell !== '');
}

function columnOf(header: string): Column | undefined {
  const name = header.toLowerCase().replace(/[\s_-]+/g, ' ');
  return [...columnNames].find(([known]) => known === name)?.[1];
}

function refuseColumns(columns: readonly (Column | undefined)[], headers: readonly string[]): UnreadList | undefined {
  if (!columns.includes('name') || !(columns.includes('email') || columns.includes('userName')))
    return { error: 'import-columns', columns: headers.join(', ') };
  const twice = headers.filter((_, i) => columns[i] && columns.indexOf(columns[i]) !== i);
  return twice.length > 0 ? { error: 'import-columns-twice', columns: twice.join(', ') } : undefined;
}

function lineFrom(row: number, cells: readonly string[], columns: readonly (Column | undefined)[]): Line {
  const named = columns.flatMap((column, i) => (column ? [[column, cells[i] ?? '']] : []));
  return { row, cells: Object.fromEntries(named), beyond: cells.slice(columns.length).join('') };
}

function rowFrom({ row, cells, beyond }: Line, { slug, classes, rolesToGive }: ImportKnown): ImportRow {
  const { name = '', class: className = '' } = cells;
  const signIn = signInFrom(cells, slug);
  const given = rolesFrom(cells.roles ?? '');
  const held: Role[] = 'fault' in given ? ['learner'] : given.roles;
  const tooMuch = held.find((role) => !rolesToGive.includes(role));
  const found = classes.filter((one) => one.name.toLowerCase() === className.toLowerCase());
  const faults = [
    beyond !== '' && { fault: 'cells' as const, value: beyond },
    name === '' && { fault: 'name' as const, value: '' },
    name.length > LONGEST_NAME && { fault: 'name-long' as const, value: name },
    'fault' in signIn && signIn,
    'fault' in given && given,
    tooMuch !== undefined && { fault: 'role-given' as const, value: tooMuch },
    className !== '' && found.length === 0 && { fault: 'class' as const, value: className },
    className !== '' && found.length > 1 && { fault: 'class-several' as const, value: className },
    className !== '' && !held.includes('learner') && { fault: 'class-learner' as const, value: className },
  ].filter((fault) => fault !== false);
  const address = 'fault' in signIn ? '' : signIn.address;
  return { row, name, address, roles: held, classId: found[0]?.id, className, faults };
}

function signInFrom(
  { email = '', userName = '' }: Line['cells'],
  slug: string,
): { address: string } | { fault: RowFault; value: string } {
  const value = email || userName;
  if (value === '') return { fault: 'sign-in-missing', value };
  if (email !== '' && userName !== '') return { fault: 'sign-in-both', value };
  const address = addressFrom(value, slug);
  // A user name under "email" is a slip of the column; better said than guessed.
  const fits = email === '' || (address !== undefined && takesMail(address));
  return address && fits ? { address } : { fault: 'sign-in-name', value };
}

/** Roles by the words that stand on screen or in exports, with any of `,;/|` between. Learner where there is none. */
function rolesFrom(text: string): { roles: Role[] } | { fault: RowFault; value: string } {
  const words = text
    .split(/[,;/|]/)
    .map((word) => word.trim().toLowerCase().replace(/\s+/g, '-'))
    .filter((word) => word !== '');
  const unknown = words.find((word) => !roles.some((role) => role === word));
  if (unknown) return { fault: 'role', value: unknown };
  return { roles: words.length === 0 ? ['learner'] : roles.filter((role) => words.includes(role)) };
}

/** Of rows that sign in alike, the first one stands. */
function markTwice(rows: readonly ImportRow[]): ImportRow[] {
  const seen = new Set<string>();
  return rows.map((row) => {
    if (row.address === '') return row;
    const twice = seen.has(row.address);
    seen.add(row.address);
    return twice ? { ...row, faults: [...row.faults, { fault: 'twice' as const, value: '' }] } : row;
  });
}

/** Marks the rows whose people are here already, wherever in the installation. */
export function markTaken(rows: readonly ImportRow[], taken: readonly string[]): ImportRow[] {
  return rows.map((row) =>
    taken.includes(row.address) ? { ...row, faults: [...row.faults, { fault: 'taken' as const, value: '' }] } : row,
  );
}
