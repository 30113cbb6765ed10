import { describe, expect, test } from 'vitest';
import {
  type ImportKnown,
  type ImportRow,
  MOST_ROWS,
  markTaken,
  parseImport,
  type RowFault,
} from '@/app/_server/people/parse-import';
import { textOf } from '@/app/people/import/read-list';
import messages from '@/content/messages/en.json';
import { roles } from '@/lib/accounts/roles';

const known: ImportKnown = {
  slug: 'harbour-bay',
  classes: [
    { id: 'mornings-id', name: 'Mornings' },
    { id: 'twice-1', name: 'Twice' },
    { id: 'twice-2', name: 'twice' },
  ],
  rolesToGive: roles,
};

function rowsOf(csv: string, changes: Partial<ImportKnown> = {}): ImportRow[] {
  const rows = parseImport(csv, { ...known, ...changes });
  if ('error' in rows) throw new Error(rows.error);
  return rows;
}

const HEAD = 'name,email,user name,roles,class';
const faultsOf = (line: string, changes: Parameters<typeof rowsOf>[1] = {}) =>
  rowsOf(`${HEAD}\n${line}`, changes)[0]?.faults.map(({ fault }) => fault);

describe('a list of people', () => {
  test('gives each person a name, a sign-in, roles and a class', () => {
    expect(rowsOf(`${HEAD}\nKit Ash,,kit,,mornings\nLou Oak,Lou@Shop.example,,Instructor; shop lead,`)).toEqual([
      {
        row: 2,
        name: 'Kit Ash',
        address: 'kit@harbour-bay.invalid',
        roles: ['learner'],
        classId: 'mornings-id',
        className: 'mornings',
        faults: [],
      },
      {
        row: 3,
        name: 'Lou Oak',
        address: 'lou@shop.example',
        roles: ['instructor', 'shop-lead'],
        classId: undefined,
        className: '',
        faults: [],
      },
    ]);
  });

  test.each([
    ['in capitals and any order', 'CLASS,User Name,NAME\nMornings,kit,Kit Ash'],
    ['with dashes, underlines and spaces', 'class, user_name , Name\nMornings,kit,Kit Ash'],
    ['with a mark of its coding', '\uFEFFname,user name,class\nKit Ash,kit,Mornings'],
    ['with semicolons', 'name;user name;class\nKit Ash;kit;Mornings'],
    ['with tabs, as pasted', 'name\tuser-name\tclass\nKit Ash\tkit\tMornings'],
    ['with lines of Windows', 'name,user name,class\r\n"Kit Ash",kit,Mornings\r\n'],
    ['with a column that nobody asked for', 'name,shoe size,user name,class\nKit Ash,44,kit,Mornings'],
  ])('is read %s', (_, csv) => {
    const [row, ...others] = rowsOf(csv);
    expect(others).toEqual([]);
    expect(row).toMatchObject({
      name: 'Kit Ash',
      address: 'kit@harbour-bay.invalid',
      classId: 'mornings-id',
      faults: [],
    });
  });

  test('has its rows numbered as a spreadsheet does, empty ones counted', () => {
    const csv = `\n${HEAD}\n\nKit,,kit,,\n,,,,\n"Lou\nof two lines",,lou,,\nAda,,ada,,\n\n`;
    expect(rowsOf(csv).map(({ row, name }) => [row, name])).toEqual([
      [4, 'Kit'],
      [6, 'Lou\nof two lines'],
      [7, 'Ada'],
    ]);
  });

  test('keeps what looks like a formula or a tag as text', () => {
    expect(rowsOf(`${HEAD}\n=1+1,,kit,,\n<b>Lou</b>,,lou,,`).map(({ name }) => name)).toEqual(['=1+1', '<b>Lou</b>']);
  });
});

describe('a row', () => {
  test.each<[string, RowFault[]]>([
    [',,kit,,', ['name']],
    [`${'x'.repeat(80)},,kit,,`, []],
    [`${'x'.repeat(81)},,kit,,`, ['name-long']],
    ['Kit,,,,', ['sign-in-missing']],
    ['Kit,kit@shop.example,kit,,', ['sign-in-both']],
    ['Kit,kit@shop,,,', ['sign-in-name']],
    ['Kit,kit,,,', ['sign-in-name']],
    ['Kit,kit@shop.invalid,,,', ['sign-in-name']],
    ['Kit,,k,,', ['sign-in-name']],
    ['Kit,,kit ash,,', ['sign-in-name']],
    ['Kit,,kit@hill-college,,', ['sign-in-name']],
    ['Kit,,kit@harbour-bay,,', []],
    ['Kit,,kit,boss,', ['role']],
    ['Kit,,kit,"learner, instructor",', []],
    ['Kit,,kit,learner|boss,', ['role']],
    ['Kit,,kit,,Evenings', ['class']],
    ['Kit,,kit,,twice', ['class-several']],
    ['Kit,,kit,instructor,Mornings', ['class-learner']],
    ['Kit,,kit,instructor/learner,Mornings', []],
    ['Ash, Kit,,kit,,Mornings', ['cells', 'sign-in-name', 'role']],
    ['Kit,,kit,,,,', []],
    [',,,boss,Evenings', ['name', 'sign-in-missing', 'role', 'class']],
  ])('%j has these faults: %j', (line, faults) => {
    expect(faultsOf(line)?.sort()).toEqual([...faults].sort());
  });

  test.each(roles)('gives the role %s only where whoever imports may give it', (role) => {
    expect(faultsOf(`Kit,,kit,${role},`, { rolesToGive: ['learner'] })).toEqual(
      role === 'learner' ? [] : ['role-given'],
    );
  });

  test('signs in like none before it in the list, however it is written', () => {
    const rows = rowsOf(
      `${HEAD}\nKit,,kit,,\nKat,,KIT@harbour-bay,,\nLou,l@s.example,,,\nLiu,L@S.example,,,\nAda,,ada,,`,
    );
    expect(rows.map(({ faults }) => faults.map(({ fault }) => fault))).toEqual([[], ['twice'], [], ['twice'], []]);
  });

  test('is taken where somebody signs in like that already', () => {
    const rows = markTaken(rowsOf(`${HEAD}\nKit,,kit,,\nLou,,lou,,\nNobody,,,,`), ['lou@harbour-bay.invalid']);
    expect(rows.map(({ faults }) => faults.map(({ fault }) => fault))).toEqual([[], ['taken'], ['sign-in-missing']]);
  });

  test('has words for each of its faults', () => {
    const named: Record<RowFault, true> = {
      name: true,
      'name-long': true,
      'sign-in-missing': true,
      'sign-in-both': true,
      'sign-in-name': true,
      taken: true,
      twice: true,
      role: true,
      'role-given': true,
      class: true,
      'class-several': true,
      'class-learner': true,
      cells: true,
    };
    expect(Object.keys(messages.importFaults).sort()).toEqual(Object.keys(named).sort());
  });
});

describe('what is no list of people', () => {
  const line = (i: number) => `Kit,,kit-${i},,`;
  const listOf = (rows: number) => [HEAD, ...Array.from({ length: rows }, (_, i) => line(i))].join('\n');

  test.each([
    ['who,email\nKit,k@s.example', { error: 'import-columns', columns: 'who, email' }],
    ['name,class\nKit,Mornings', { error: 'import-columns', columns: 'name, class' }],
    ['Kit,kit@shop.example', { error: 'import-columns', columns: 'Kit, kit@shop.example' }],
    ['name,user name,Name\nKit,kit,Kat', { error: 'import-columns-twice', columns: 'Name' }],
    ['name,email,e-mail\nKit,k@s.example,', { error: 'import-columns-twice', columns: 'e-mail' }],
    [HEAD, { error: 'import-empty' }],
    [`${HEAD}\n,,,,\n\n`, { error: 'import-empty' }],
    [`${HEAD}\nLou,,lou,,\n"Kit,,kit,,`, { error: 'import-unread', row: 3 }],
    ['\u0000\u0001\u0002', { error: 'import-columns', columns: '\u0000\u0001\u0002' }],
  ])('%j says what is wrong with it', (csv, refusal) => {
    expect(parseImport(csv, known)).toEqual(refusal);
  });

  test('nor is one with more people than come in at once', () => {
    expect(rowsOf(listOf(MOST_ROWS))).toHaveLength(500);
    expect(parseImport(listOf(MOST_ROWS + 1), known)).toEqual({ error: 'import-long', rows: 501, most: 500 });
  });
});

describe('a file', () => {
  const bytes = (...values: number[]) => new Uint8Array(values);

  test('is read as what spreadsheets write', () => {
    expect(textOf(new TextEncoder().encode('José'))).toBe('José');
    expect(textOf(bytes(0xef, 0xbb, 0xbf, 0x4a))).toBe('J');
    expect(textOf(bytes(0x4a, 0x6f, 0x73, 0xe9))).toBe('José');
    expect(textOf(bytes(0xff, 0xfe, 0x4a, 0, 0xe9, 0))).toBe('Jé');
  });
});
