import { drawsWithout, MOST_VARIABLES } from './draws';
import { parseFormula, takenNames } from './formula';
import { ANSWER, namesIn } from './placeholders';
import type { WrittenBody, WrittenQuestion } from './written-question';

/** What is wrong with a written question that its shape alone does not show. */
export interface WrittenFault {
  path: readonly (string | number)[];
  code:
    | 'id-twice'
    | 'no-such-id'
    | 'text-twice'
    | 'range'
    | 'area'
    | 'name-taken'
    | 'name-unknown'
    | 'formula'
    | 'no-number'
    | 'no-such-topic'
    | 'no-such-rig'
    | 'no-such-part'
    | 'no-such-picture';
  /** What the words about it name. */
  values: Readonly<Record<string, string | number>>;
}

type Of<Form extends WrittenBody['form']> = Extract<WrittenBody, { form: Form }>;

/** Faults that can be seen without content. */
export function faultsOf(written: Pick<WrittenQuestion, 'stem' | 'explanation' | 'body'>): WrittenFault[] {
  const { body } = written;
  const [list, items] = itemsOf(body);
  return [
    ...twice(items.map(({ id }) => id)).map(({ index, value }) => fault(list, index, 'id', 'id-twice', { id: value })),
    ...twice(items.map(({ text = '' }) => text)).map(({ index, value }) =>
      fault(list, index, 'text', 'text-twice', { text: value }),
    ),
    ...unknownRight(body, new Set(items.map(({ id }) => id))),
    ...(body.form === 'numbers' ? numberFaults(written, body) : []),
  ];
}

function fault(
  list: string,
  index: number,
  field: string,
  code: WrittenFault['code'],
  values: WrittenFault['values'],
): WrittenFault {
  return { path: ['body', list, index, field], code, values };
}

/** What has an id, and what is shown of it where two alike could not be told apart. */
function itemsOf(body: WrittenBody): [list: string, items: readonly { id: string; text?: string }[]] {
  switch (body.form) {
    case 'choice':
    case 'several':
      return ['options', body.options];
    case 'order':
      return ['items', body.items];
    case 'spot':
      return ['areas', body.areas.map(({ id, name }) => ({ id, text: name }))];
    case 'numbers':
      return ['variables', body.variables.map(({ name }) => ({ id: name }))];
    default:
      return ['', []];
  }
}

function twice(values: readonly string[]): { index: number; value: string }[] {
  return values.flatMap((value, index) => (value !== '' && values.indexOf(value) < index ? [{ index, value }] : []));
}

function unknownRight(body: WrittenBody, ids: ReadonlySet<string>): WrittenFault[] {
  if (!('right' in body) || body.form === 'point') return [];
  const unknown = [body.right].flat().filter((id) => !ids.has(id));
  return unknown.map((id) => ({ path: ['body', 'right'], code: 'no-such-id', values: { id } }));
}

function numberFaults({ stem, explanation }: Pick<WrittenQuestion, 'stem' | 'explanation'>, body: Of<'numbers'>) {
  const names = body.variables.map(({ name }) => name);
  const taken = new Set([...takenNames, ANSWER]);
  return [
    ...names.flatMap((name, index) =>
      taken.has(name) ? [fault('variables', index, 'name', 'name-taken', { name })] : [],
    ),
    ...unknownNames('stem', stem, names),
    ...unknownNames('explanation', explanation, [...names, ANSWER]),
    ...formulaFaults(body, names),
  ];
}

function isSound({ from, to, step }: Of<'numbers'>['variables'][number]): boolean {
  return [from, to, step].every(Number.isFinite) && from <= to && step > 0;
}

function unknownNames(field: 'stem' | 'explanation', text: string, known: readonly string[]): WrittenFault[] {
  const unknown = namesIn(text).filter((name) => !known.includes(name));
  return unknown.map((name) => ({ path: [field], code: 'name-unknown', values: { name } }));
}

function formulaFaults({ formula, variables }: Of<'numbers'>, names: readonly string[]): WrittenFault[] {
  const path = ['body', 'formula'];
  const parsed = parseFormula(formula, names);
  if ('fault' in parsed) {
    const { fault: what, at, name = '' } = parsed;
    return [{ path, code: 'formula', values: { what, at, name } }];
  }
  // The schema has said already what is wrong with the ranges.
  if (variables.length > MOST_VARIABLES || !variables.every(isSound)) return [];
  const without = drawsWithout(parsed.formula, variables);
  if (!without) return [];
  const draws = Object.entries(without).map(([name, value]) => `${name} = ${value}`);
  return [{ path, code: 'no-number', values: { draws: draws.join(', ') } }];
}
