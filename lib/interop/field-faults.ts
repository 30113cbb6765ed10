import type { z } from 'zod';

/** What a field of a question has wrong. */
export interface FieldFault {
  path: readonly (string | number)[];
  code: FieldFaultCode;
  /** What words about it name: a bound, a name, a choice of values. */
  values: Readonly<Record<string, string | number>>;
}

export const fieldFaultCodes = [
  'missing',
  'not-a-number',
  'not-whole',
  'too-small',
  'too-large',
  'too-short',
  'too-long',
  'too-few',
  'too-many',
  'not-one-of',
  'shape',
  // Those of `lib/questions/written/written-faults.ts`.
  'id-twice',
  'no-such-id',
  'text-twice',
  'name-taken',
  'name-unknown',
  'formula',
  'no-number',
  'no-such-topic',
  'no-such-rig',
  'no-such-part',
] as const;
export type FieldFaultCode = (typeof fieldFaultCodes)[number];

/** What the schema of a question says of one that is not valid, in codes. */
export function fieldFaults(issues: readonly z.core.$ZodIssue[]): FieldFault[] {
  const faults = issues.map((issue) => {
    const path = issue.path.filter((part) => typeof part !== 'symbol');
    return { path, ...faultOf(issue) };
  });
  const told = new Set(faults.filter(({ code }) => code !== 'shape').map(({ path }) => path.join('.')));
  return faults.filter(({ code, path }) => code !== 'shape' || !told.has(path.join('.')));
}

function faultOf(issue: z.core.$ZodIssue): Omit<FieldFault, 'path'> {
  switch (issue.code) {
    case 'invalid_type':
      return typeFault(issue);
    case 'too_small':
      return { code: boundFault(issue.origin, true, Number(issue.minimum)), values: { bound: Number(issue.minimum) } };
    case 'too_big':
      return { code: boundFault(issue.origin, false, Number(issue.maximum)), values: { bound: Number(issue.maximum) } };
    case 'invalid_value':
      return { code: 'not-one-of', values: { choices: issue.values.map(String).join(', ') } };
    case 'custom':
      return customFault(issue.params ?? {});
    default:
      return { code: 'shape', values: {} };
  }
}

function typeFault({ expected, input }: z.core.$ZodIssueInvalidType): Omit<FieldFault, 'path'> {
  if (expected === 'int') return { code: 'not-whole', values: {} };
  if (expected === 'number') return { code: 'not-a-number', values: {} };
  return { code: input === undefined ? 'missing' : 'shape', values: {} };
}

function boundFault(origin: string, isLow: boolean, bound: number): FieldFaultCode {
  if (origin === 'string') return isLow ? (bound === 1 ? 'missing' : 'too-short') : 'too-long';
  if (origin === 'array') return isLow ? 'too-few' : 'too-many';
  return isLow ? 'too-small' : 'too-large';
}

function customFault({ code, values }: Record<string, unknown>): Omit<FieldFault, 'path'> {
  const known = fieldFaultCodes.find((one) => one === code);
  return known ? { code: known, values: (values ?? {}) as FieldFault['values'] } : { code: 'shape', values: {} };
}
