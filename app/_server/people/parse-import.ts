import Papa from 'papaparse';
import { type Role, roles } from '@/lib/accounts/roles';
import { addressFrom } from '@/lib/accounts/sign-in-name';
import { LONGEST_NAME } from '../entering/newcomer';

/** A class fits; more would keep everybody waiting while their PINs are hashed. */
export const MOST_ROWS = 200;

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
  | 'class';

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
  /** Ids of classes by their name in small letters. */
  classes: ReadonlyMap<string, string>;
  /** Roles that whoever imports may give. */
  rolesToGive: readonly Role[];
}

export type UnreadList =
  | { error: 'import-empty' }
  | { error: 'import-columns'; columns: string }
  | { error: 'import-unread'; row: number }
  | { error: 'import-long'; rows: number };

type Cells = Readonly<Record<string, string>>;

/** Reads a list of people. Whether somebody signs in like that already is for the database to say (`markTaken`). */
export function parseImport(csv: string, known: ImportKnown): ImportRow[] | UnreadList {
  const { data, errors, meta } = Papa.parse<Record<string, string>>(csv.replace(/^\uFEFF/, ''), {
    header: true,
    skipEmptyLines: 'greedy',
    transformHeader: (header) =>
      header
        .trim()
        .toLowerCase()
        .replace(/[\s_-]+/g, ' '),
    transform: (cell) => cell.trim(),
  });
  const columns = meta.fields ?? [];
  if (!columns.includes('name') || !['email', 'e mail', 'user name'].some((column) => columns.includes(column)))
    return { error: 'import-columns', columns: columns.join(', ').slice(0, 120) };
  const broken = errors.find(({ type }) => type === 'Quotes');
  if (broken) return { error: 'import-unread', row: (broken.row ?? 0) + 2 };
  if (data.length === 0) return { error: 'import-empty' };
  if (data.length > MOST_ROWS) return { error: 'import-long', rows: data.length };
  return markTwice(data.map((cells, index) => rowFrom(cells, index + 2, known)));
}

function rowFrom(cells: Cells, row: number, { slug, classes, rolesToGive }: ImportKnown): ImportRow {
  const faults: ImportRow['faults'] = [];
  const name = cells.name ?? '';
  if (name === '') faults.push({ fault: 'name', value: '' });
  if (name.length > LONGEST_NAME) faults.push({ fault: 'name-long', value: name });
  const signIn = signInFrom(cells, slug);
  if ('fault' in signIn) faults.push(signIn);
  const given = rolesFrom(cells.roles ?? cells.role ?? '');
  if ('fault' in given) faults.push(given);
  const held = 'fault' in given ? [] : given.roles;
  const tooMuch = held.find((role) => !rolesToGive.includes(role));
  if (tooMuch) faults.push({ fault: 'role-given', value: tooMuch });
  const className = cells.class ?? '';
  const classId = className === '' ? undefined : classes.get(className.toLowerCase());
  if (className !== '' && !classId) faults.push({ fault: 'class', value: className });
  const address = 'fault' in signIn ? '' : signIn.address;
  return { row, name, address, roles: held, classId, className, faults };
}

function signInFrom(cells: Cells, slug: string): { address: string } | { fault: RowFault; value: string } {
  const email = cells.email ?? cells['e mail'] ?? '';
  const userName = cells['user name'] ?? '';
  const value = email || userName;
  if (value === '') return { fault: 'sign-in-missing', value };
  if (email !== '' && userName !== '') return { fault: 'sign-in-both', value };
  const address = addressFrom(value, slug);
  // A user name under "email" is a slip of the column; better said than guessed.
  const fits = email === '' || email.includes('.');
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
