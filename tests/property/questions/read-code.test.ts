import { describe, expect, test } from 'vitest';
import { applyCause, canHappen } from '@/lib/faults/apply-cause';
import type { Option } from '@/lib/questions/answer';
import type { Line } from '@/lib/questions/line';
import type { GeneratedQuestion } from '@/lib/questions/question';
import { DAYS, dayOf } from '@/lib/questions/shared/rig-day';
import { operatingPoints } from '@/lib/rig/operating-point';
import { troubleCodes } from '@/lib/symptoms/trouble-codes';
import type { TroubleCode } from '@/lib/symptoms/work-order';
import { aRig, catalogue, causeOf } from '../../support/bench-rig';
import { expectSoundQuestions } from '../../support/sound-questions';

const asked: GeneratedQuestion[] = [];

test('a key is what the codes, the bytes or the broken rigs themselves say', () => {
  expectSoundQuestions('read-code', (question) => {
    const form = formOf(question);
    checks[form]?.(question);
    asked.push(question);
  });
  expect(new Set(asked.map(formOf))).toEqual(new Set(Object.keys(checks)));
});

describe('over all that was asked', () => {
  test('the key stands at every place alike', () => {
    const ofFour = asked.filter((question) => optionsOf(question).length === 4);
    const places = ofFour.flatMap(({ key }) => (key.form === 'choice' ? key.right : []));
    for (const place of 'abcd') {
      const share = places.filter((id) => id === place).length / places.length;
      expect(share).toBeGreaterThan(0.21);
      expect(share).toBeLessThan(0.29);
    }
  });

  test('a statement of each sort is the right one as often', () => {
    const proofs = asked.filter((question) => formOf(question) === 'proof');
    const right = proofs.flatMap((question) =>
      optionsOf(question).flatMap(({ id, line }) =>
        rightOf(question).includes(id) && 'say' in line ? [line.say] : [],
      ),
    );
    const open = right.filter((say) => say === 'proof-open').length / right.length;
    expect(open).toBeGreaterThan(0.42);
    expect(open).toBeLessThan(0.58);
  });

  // Days that the generator has not looked at.
  test('what never stores a code does not do so on another day either', () => {
    const never = new Set(asked.flatMap((question) => (question.key.form === 'several' ? wrongCauses(question) : [])));
    expect(never.size).toBeGreaterThan(40);
    for (const one of never) {
      const [rig = '', cause = '', spn = ''] = one.split(' ');
      for (let day = 0; day < DAYS; day++)
        for (const codes of storedOn(rig, cause, day, [0.5, 1]))
          expect(
            codes.map((code) => String(code.spn)),
            `${one}, day ${day}`,
          ).not.toContain(spn);
    }
  });
});

/** What each form's key is, worked out another way. */
const checks: Record<string, (question: GeneratedQuestion) => void> = {
  meaning: (question) => {
    const [code] = question.figure?.figure === 'codes' ? question.figure.codes : [];
    for (const { id, line } of optionsOf(question)) {
      const said = namedIn(line, 'parameter') === String(code?.spn) && namedIn(line, 'mode') === String(code?.fmi);
      expect(said).toBe(rightOf(question).includes(id));
    }
  },
  mode: (question) => {
    const [stem] = question.stem;
    const fmi = stem && 'say' in stem ? stem.with?.fmi : undefined;
    for (const { id, line } of optionsOf(question))
      expect('say' in line && line.with?.fmi === fmi).toBe(rightOf(question).includes(id));
  },
  possible: (question) => {
    const codes = codesIn(question);
    for (const { id, line } of optionsOf(question)) {
      const stores = everStores(question.rig, namedIn(line, 'cause'), codes);
      expect(stores, namedIn(line, 'cause')).toBe(rightOf(question).includes(id));
    }
  },
  proof: (question) => {
    const codes = codesIn(question);
    const stores = (line: Line, name: string) => everStores(question.rig, namedIn(line, name), codes);
    for (const { id, line } of optionsOf(question)) {
      const said = 'say' in line ? line.say : '';
      const open = said === 'proof-open' && stores(line, 'suspect') && stores(line, 'other');
      const excluded = said === 'proof-excluded' && !stores(line, 'other');
      expect(open || excluded).toBe(rightOf(question).includes(id));
    }
    // Two can store just that, so that nothing is proven.
    const able = new Set(
      optionsOf(question).flatMap(({ line }) => ['suspect', 'other'].map((name) => namedIn(line, name))),
    );
    expect([...able].filter((cause) => cause && everStores(question.rig, cause, codes)).length).toBeGreaterThan(1);
  },
  bytes: ({ stem, key }) => {
    if (key.form !== 'numbers') throw new Error('no numbers');
    const given = stem[1] && 'say' in stem[1] ? (stem[1].with ?? {}) : {};
    const value = (part: string) => key.parts[part]?.value ?? Number.NaN;
    // As one long row of bits, the first byte's last: 1 0 count, 5 mode, 3 + 8 + 8 parameter.
    if (typeof given.hex === 'string') {
      const [one = 0, two = 0, three = 0, four = 0] = given.hex.split(' ').map((byte) => Number.parseInt(byte, 16));
      expect(value('spn')).toBe(((three >> 5) << 16) | (two << 8) | one);
      expect(value('fmi')).toBe(three & 0b11111);
      expect(value('often')).toBe(four & 0b1111111);
    } else {
      const [spn, fmi] = [Number(given.spn), Number(given.fmi)];
      expect(value('first')).toBe(spn & 0xff);
      expect(value('second')).toBe((spn >> 8) & 0xff);
      expect(value('third')).toBe((spn >> 16) * 32 + fmi);
    }
  },
  special: (question) => {
    const [stem] = question.stem;
    const hex = stem && 'say' in stem ? String(stem.with?.hex) : '';
    const telling = Number.parseInt(hex.split(' ').at(-1) ?? '', 16);
    const right = optionsOf(question).find(({ id }) => rightOf(question).includes(id));
    const says = right && 'say' in right.line ? right.line.say : '';
    const expected = telling === 0xff ? 'special-not-available' : telling === 0xfe ? 'special-error' : 'special-value';
    expect(says).toBe(expected);
    if (says === 'special-value') expect(telling).toBeLessThanOrEqual(0xfa);
  },
};

/** Whether a cause stores just these codes at some severity on one of the days; or nothing like them at all. */
function everStores(rig: string, cause: string, codes: string): boolean {
  const all = everything(rig, cause);
  if (all.has(codes)) return true;
  const wanted = codes.split(' ').map((code) => code.split('/')[0]);
  const stored = [...all].flatMap((lot) => lot.split(' ').map((code) => code.split('/')[0]));
  // What stores the same parameters at other severities is not offered: it could be disputed.
  expect(
    wanted.every((spn) => stored.includes(spn)),
    `${cause} stores ${stored}`,
  ).toBe(false);
  return false;
}

const lots = new Map<string, Set<string>>();

function everything(rig: string, cause: string): Set<string> {
  const key = `${rig} ${cause}`;
  const known = lots.get(key);
  if (known) return known;
  const found = new Set<string>();
  for (const day of extremes(rig))
    for (const codes of storedOn(rig, cause, day, [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1])) found.add(lotOf(codes));
  lots.set(key, found);
  return found;
}

/** The coldest and the warmest. */
function extremes(rig: string): number[] {
  const air = Array.from({ length: DAYS }, (_, day) => dayOf(day, aRig(rig), catalogue).setting.airTemperature);
  return [air.indexOf(Math.min(...air)), air.indexOf(Math.max(...air))];
}

/** Codes of a cause at those severities that it may have. */
function storedOn(rig: string, id: string, number: number, severities: readonly number[]): TroubleCode[][] {
  const cause = causeOf(id);
  const { setting, fuel } = dayOf(number, aRig(rig), catalogue);
  if (!canHappen(aRig(rig), cause, setting)) return [];
  return severities
    .filter((severity) => severity >= cause.severity.min && severity <= cause.severity.max)
    .map((severity) => troubleCodes(aRig(rig), operatingPoints(applyCause(aRig(rig), cause, severity), setting, fuel)));
}

function wrongCauses(question: GeneratedQuestion): string[] {
  const { key } = question;
  const because = key.form === 'several' ? Object.values(key.because ?? {}) : [];
  return because.map((line) => `${question.rig} ${namedIn(line, 'cause')} ${namedIn(line, 'parameter')}`);
}

function codesIn({ stem }: GeneratedQuestion): string {
  const codes = stem.flatMap((line) => ('say' in line && line.say === 'code' && line.with ? [line.with] : []));
  return lotOf(codes.map(({ spn, fmi }) => ({ spn: Number(spn), fmi: Number(fmi) })));
}

function lotOf(codes: readonly TroubleCode[]): string {
  return codes.map(({ spn, fmi }) => `${spn}/${fmi}`).join(' ');
}

function formOf({ stem }: GeneratedQuestion): string {
  const last = stem[stem.length - 1];
  const code = last && 'say' in last ? (last.say.split('-')[0] ?? '') : '';
  return code;
}

function optionsOf({ answer }: GeneratedQuestion): readonly Option[] {
  return 'options' in answer ? answer.options : [];
}

function rightOf({ key }: GeneratedQuestion): readonly string[] {
  return 'right' in key ? key.right : [];
}

function namedIn(line: Line, name: string): string {
  const value = 'say' in line ? line.with?.[name] : undefined;
  return typeof value === 'object' && 'name' in value ? value.id : '';
}
