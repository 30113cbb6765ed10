import { expect, test } from 'vitest';
import { rounded } from '@/lib/questions/kinds/work-out/sum';
import type { Line } from '@/lib/questions/line';
import { markAnswer } from '@/lib/questions/mark';
import type { GeneratedQuestion } from '@/lib/questions/question';
import { kindOf } from '@/lib/questions/question-from-seed';
import { catalogue } from '../../support/bench-rig';
import { givenIn } from '../../support/given-in';
import { expectSoundQuestions } from '../../support/sound-questions';

const asked: GeneratedQuestion[] = [];

test('every key follows from the numbers that are printed', () => {
  expectSoundQuestions('work-out', (question) => {
    const given = givenIn(question.stem);
    const worked = workedByHand[exerciseOf(question)];
    if (worked) for (const [part, value] of Object.entries(worked(given, question))) expectKey(question, part, value);
    asked.push(question);
  });
});

test('every exercise is asked, on every topic with something to reckon', () => {
  expect([...new Set(asked.map(exerciseOf))].sort()).toEqual(EXERCISES);
  expect(new Set(asked.flatMap(({ topics }) => topics)).size).toBe(13);
});

test('a stem holds what it prints and nothing else', () => {
  const words = kindOf('work-out', catalogue).content.text.en.lines;
  for (const { stem, answer } of asked)
    for (const line of [...stem, ...(answer.form === 'numbers' ? answer.parts.map((part) => part.line) : [])])
      if ('say' in line)
        for (const name of Object.keys(line.with ?? {})) expect(words[line.say]).toMatch(new RegExp(`{${name}[,}]`));
});

test('each slip of one part has another number, and its note says how it came about', () => {
  for (const question of asked) {
    const { answer, key } = question;
    if (key.form !== 'numbers' || answer.form !== 'numbers') continue;
    const [part] = answer.parts;
    const slip = part && key.parts[part.id]?.slips[0];
    if (!slip || answer.parts.length > 1) continue;
    const given = part.units[0] === undefined ? { value: slip.value } : { value: slip.value, unit: part.units[0] };
    const mark = markAnswer(question, { form: 'numbers', parts: { [part.id]: given } });
    expect(mark).toMatchObject({ credit: 0, notes: [slip.line] });
  }
});

test('who carries a wrong first number on rightly gets something for the second', () => {
  for (const question of asked) {
    const { answer, key } = question;
    if (key.form !== 'numbers' || answer.form !== 'numbers') continue;
    const carried: Record<string, number> = {};
    for (const { id } of answer.parts) {
      const part = key.parts[id];
      carried[id] = part?.follows ? part.follows.value(carried[part.follows.part] ?? 0) : 1.1 * (part?.value ?? 0);
    }
    const parts = answer.parts.map(({ id, units: [unit] }) => {
      return [id, { value: carried[id] ?? 0, ...(unit !== undefined && { unit }) }] as const;
    });
    const { parts: outcomes } = markAnswer(question, { form: 'numbers', parts: Object.fromEntries(parts) });
    for (const { id } of answer.parts) if (key.parts[id]?.follows) expect(outcomes?.[id], id).not.toBe('wrong');
  }
});

const EXERCISES = [
  'busValue',
  'convertUnit',
  'filterDrop',
  'guardBand',
  'holdDrop',
  'leakBack',
  'primeTime',
  'pumpDelivery',
  'repairShare',
  'residualPressure',
  'sensorVolts',
  'suctionAbsolute',
  'supplyDrop',
  'throttlingHeat',
  'viscosityChart',
  'volumeCorrection',
];

/** With a pocket calculator, from what the stem prints. Conversions, the bus and fuel stand against published values elsewhere. */
const workedByHand: Record<
  string,
  (given: (name: string) => number, question: GeneratedQuestion) => Record<string, number>
> = {
  filterDrop: (given, { stem }) => {
    const outlet = given('outlet') * { kPa: 1, bar: 100, psi: 6.895 }[unitOf(stem, 'outlet') as 'kPa' | 'bar' | 'psi'];
    const drop = given('inlet') - outlet;
    return { drop, share: (100 * drop) / given('limit') };
  },
  leakBack: (given) => {
    const total = given('collected') * (60 / given('seconds'));
    return { total, each: total / given('cylinders') };
  },
  primeTime: (given) => ({ seconds: (given('line') + given('filter')) / (given('delivery') * 1000) / (1 / 60) }),
  guardBand: (given) => {
    const allowed = (given('percent') * given('span')) / 100;
    const uncertainty = ((allowed ** 2 + given('readable') ** 2) / 3) ** 0.5;
    return { allowed, uncertainty, fails: given('limit') + 1.645 * uncertainty };
  },
  holdDrop: (given) => ({
    each: given('reached') / given('seconds') - given('held') / given('seconds'),
    percent: 100 * (1 - given('held') / given('reached')),
  }),
  throttlingHeat: (given, { stem }) => {
    const rise = given('each') * (given('shown') / (unitOf(stem, 'shown') === 'bar' ? 10 : 1));
    return { rise, after: rise + given('before') };
  },
  pumpDelivery: (given) => {
    const theory = given('displacement') * given('speed') * 1e-3;
    return { theory, share: given('measured') / theory / 0.01 };
  },
  repairShare: (given) => ({
    fall: 100 - (100 * given('after')) / given('before'),
    share: given('after') / given('limit') / 0.01,
  }),
  residualPressure: (given, { stem }) => {
    const psi = (given('shown') / { MPa: 1, bar: 10, kPa: 1000 }[unitOf(stem, 'shown') as 'MPa' | 'bar' | 'kPa']) * 145;
    return { psi, times: psi / 100 };
  },
  supplyDrop: (given) => ({
    drop: given('battery') - given('pump'),
    ohm: (given('battery') - given('pump')) / given('current'),
  }),
  suctionAbsolute: (given, { stem, figure }) => {
    const rows =
      figure?.figure === 'table' ? figure.rows.map((row) => row.map((cell) => givenIn([cell])('value'))) : [];
    const ambient = between(rows, given('altitude'));
    const vacuum = given('vacuum') * (unitOf(stem, 'vacuum') === 'inHg' ? 3.386 : 1);
    return { ambient, absolute: ambient - vacuum };
  },
};

function expectKey({ key }: GeneratedQuestion, part: string, value: number): void {
  if (key.form !== 'numbers') throw new Error('no numbers');
  const { value: right, tolerance } = key.parts[part] ?? { value: Number.NaN, tolerance: 0 };
  // Rounding of what is carried from step to step, and no more.
  expect(Math.abs(value - right), part).toBeLessThan(0.3 * tolerance);
}

function exerciseOf({ stem: [first] }: GeneratedQuestion): string {
  return first && 'say' in first ? (first.say.split('-')[0] ?? '') : '';
}

function unitOf(lines: readonly Line[], name: string): string {
  for (const line of lines) {
    const value = 'say' in line ? line.with?.[name] : undefined;
    if (typeof value === 'object' && 'quantity' in value) return value.unit;
  }
  throw new Error(`${name} has no unit`);
}

function between(rows: readonly (readonly number[])[], at: number): number {
  const next = rows.findIndex(([head = Number.NaN]) => head >= at);
  const [[x0 = 0, y0 = 0] = [], [x1 = 0, y1 = 0] = []] = [rows[next - 1], rows[next]];
  return rounded((y0 * (x1 - at) + y1 * (at - x0)) / (x1 - x0), 2);
}
