import { momentOf } from '@/lib/assignments/local-time';
import { type AssignmentRules, rulesSchema } from '@/lib/assignments/rules';
import { type Part, parts } from '@/lib/grading/grade';

/** Fields of the form that something may be wrong with. */
export const assignmentFields = [
  'setId',
  'title',
  'whom',
  'opens',
  'closes',
  'timeZone',
  'turns',
  'minutes',
  'lateHours',
  'lateCost',
  'weights',
] as const;
export type AssignmentField = (typeof assignmentFields)[number];

/** What is wrong with a field. The sentence for it is in `assignments.wrong`. */
export type Wrong =
  | 'missing'
  | 'too-long'
  | 'nobody'
  | 'no-date'
  | 'skipped'
  | 'no-zone'
  | 'before-opening'
  | 'in-the-past'
  | 'window-too-short'
  | 'turns'
  | 'minutes'
  | 'hours'
  | 'cost'
  | 'not-100';
export type Wrongs = Partial<Record<AssignmentField, Wrong>>;

/** What somebody wants to give, as far as a form alone can tell that it makes sense. */
export interface WantedAssignment {
  setId: string;
  title: string;
  classIds: string[];
  personIds: string[];
  rules: AssignmentRules;
  opensAt: Date;
  closesAt: Date;
}

const LONGEST_TITLE = 120;
/** More classes, and more people, than one assignment is given to. */
const MOST = 500;

/** Everything that is wrong with a form, field by field, or what it asks for. */
export function readAssignmentForm(form: FormData, now: Date): { wrong: Wrongs } | { wanted: WantedAssignment } {
  const wrong: Wrongs = {};
  const setId = textOf(form, 'setId');
  const title = textOf(form, 'title');
  if (!setId) wrong.setId = 'missing';
  if (!title) wrong.title = 'missing';
  if (title.length > LONGEST_TITLE) wrong.title = 'too-long';
  const [classIds, personIds] = [idsOf(form, 'classIds'), idsOf(form, 'personIds')];
  if (classIds.length + personIds.length === 0) wrong.whom = 'nobody';
  const minutes = minutesOf(form, wrong);
  const dates = readDates(form, now, wrong);
  if (dates && minutes && (dates.closesAt.getTime() - dates.opensAt.getTime()) / 60_000 < minutes)
    wrong.minutes ??= 'window-too-short';
  const rest = {
    turns: numberOf(form, 'turns', { from: 1, to: 10 }, 'turns', wrong),
    late: lateOf(form, wrong),
    weights: weightsOf(form, wrong),
  };
  if (!dates || Object.keys(wrong).length > 0) return { wrong };
  const { opensAt, closesAt, ...local } = dates;
  const rules = rulesSchema.parse({
    ...local,
    ...rest,
    minutes,
    seeds: form.get('seeds') === 'parallel' ? 'parallel' : 'same',
    mode: form.get('mode') === 'practice' ? 'practice' : 'assessed',
    anonymous: form.get('anonymous') === 'on',
    secondMarker: form.get('secondMarker') === 'on',
  });
  return { wanted: { setId, title, classIds, personIds, rules, opensAt, closesAt } };
}

export interface WantedDates {
  opens: string;
  closes: string;
  timeZone: string;
  opensAt: Date;
  closesAt: Date;
}

/** When it opens and closes; what is wrong with either is added to `wrong`. */
export function readDates(form: FormData, now: Date, wrong: Wrongs): WantedDates | undefined {
  const timeZone = textOf(form, 'timeZone');
  const [opens, closes] = [textOf(form, 'opens'), textOf(form, 'closes')];
  if (!momentOf('2026-01-01T00:00', timeZone)) wrong.timeZone = 'no-zone';
  if (wrong.timeZone) return undefined;
  const opensAt = dateOf(opens, timeZone, 'opens', wrong);
  const closesAt = dateOf(closes, timeZone, 'closes', wrong);
  if (!opensAt || !closesAt) return undefined;
  if (closesAt <= opensAt) wrong.closes = 'before-opening';
  else if (closesAt <= now) wrong.closes = 'in-the-past';
  return wrong.closes ? undefined : { opens, closes, timeZone, opensAt, closesAt };
}

function dateOf(local: string, timeZone: string, field: 'opens' | 'closes', wrong: Wrongs): Date | undefined {
  const found = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(local) ? momentOf(local, timeZone) : undefined;
  if (!found) wrong[field] = local ? 'no-date' : 'missing';
  if (found?.shown === 'skipped') wrong[field] = 'skipped';
  return wrong[field] || !found ? undefined : new Date(found.at);
}

function minutesOf(form: FormData, wrong: Wrongs): number | null {
  if (!textOf(form, 'minutes')) return null;
  return numberOf(form, 'minutes', { from: 5, to: 600 }, 'minutes', wrong);
}

function lateOf(form: FormData, wrong: Wrongs): AssignmentRules['late'] {
  if (form.get('late') !== 'taken') return 'refused';
  return {
    hours: numberOf(form, 'lateHours', { from: 1, to: 720 }, 'hours', wrong),
    cost: numberOf(form, 'lateCost', { from: 0, to: 100 }, 'cost', wrong),
  };
}

function weightsOf(form: FormData, wrong: Wrongs): AssignmentRules['weights'] {
  if (form.get('ownWeights') !== 'on') return null;
  const weights = Object.fromEntries(parts.map((part) => [part, wholeOf(textOf(form, `weight.${part}`))])) as Record<
    Part,
    number
  >;
  const sum = Object.values(weights).reduce((all, weight) => all + weight, 0);
  // A field that holds no number makes the sum none.
  if (sum !== 100) wrong.weights = 'not-100';
  return weights;
}

function numberOf(
  form: FormData,
  name: AssignmentField,
  { from, to }: { from: number; to: number },
  code: Wrong,
  wrong: Wrongs,
): number {
  const value = wholeOf(textOf(form, name));
  if (!(value >= from && value <= to)) wrong[name] = code;
  return value;
}

/** A whole number without a sign; NaN where it is none. */
function wholeOf(text: string): number {
  return /^\d{1,4}$/.test(text) ? Number(text) : Number.NaN;
}

function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === 'string' ? value.trim() : '';
}

function idsOf(form: FormData, name: string): string[] {
  const ids = form.getAll(name).filter((id) => typeof id === 'string' && id.length > 0 && id.length <= 80);
  return [...new Set(ids as string[])].slice(0, MOST);
}
