import { describe, expect, test } from 'vitest';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { certify } from '@/lib/diagnosis/certificate';
import { causesIn, topicsOf } from '@/lib/topics/topics-of';
import { type Certify, type FoundCase, findCase, type UnmetWish } from '@/lib/wishes/find-case';
import type { Wishes } from '@/lib/wishes/wishes';
import { aRig, catalogue } from '../../support/bench-rig';
import { quickCertificate } from '../../support/quick-certificate';

const quickly: Certify = (theCase) => quickCertificate(theCase);

function find(wishes: Wishes, seed = 'alder', by: Certify = quickly): FoundCase | UnmetWish {
  return findCase(wishes, seed, catalogue, by);
}

function found(wishes: Wishes, seed?: string, by?: Certify): FoundCase {
  const result = find(wishes, seed, by);
  if ('unmet' in result) throw new Error(`No case: ${result.unmet}`);
  return result;
}

const seeds = ['alder', 'beech', 'cedar', 'damson'];

test('the same seed finds the same case, another seed another', () => {
  const wishes: Wishes = { topics: ['filtration'], difficulty: [-1, 1] };
  expect(found(wishes).case.code).toBe(found(wishes).case.code);
  expect(new Set(seeds.map((seed) => found(wishes, seed).case.code)).size).toBe(seeds.length);
});

test('without wishes any settled case will do, on any rig', () => {
  const rigs = new Set(Array.from({ length: 12 }, (_, n) => found({}, `oak-${n}`).case.rig.id));
  expect([...rigs].sort()).toEqual([...catalogue.rigs.keys()]);
});

describe.each(seeds)('from the seed %s', (seed) => {
  test('every wish is met', () => {
    for (const id of catalogue.rigs.keys()) expect(found({ rigs: [id] }, seed).case.rig.id).toBe(id);
    const causes = ['lift-pump-weak', 'suction-air-leak'];
    expect(causes).toContain(found({ causes }, seed).case.truth.cause);
    const topics = ['high-pressure-and-leakage', 'filtration'];
    expect(topicsOf(found({ topics }, seed).case, catalogue).map(({ id }) => id)).toEqual([expect.toBeOneOf(topics)]);
    const { difficulty } = found({ difficulty: [0.5, 1] }, seed).certificate;
    expect(difficulty).toBeGreaterThanOrEqual(0.5);
    expect(difficulty).toBeLessThanOrEqual(1);
    expect(found({ minutes: 25 }, seed).certificate.route.minutes).toBeLessThanOrEqual(25);
  });

  test('the hardest level has one or two causes, as wished', () => {
    const double = found({ hardest: true, faults: 'double' }, seed).case;
    expect(double.spec.hardest).toBe(true);
    expect(causesIn(double, catalogue)).toHaveLength(2);
    expect(causesIn(found({ hardest: true, faults: 'single' }, seed).case, catalogue)).toHaveLength(1);
  });

  test('where only some causes are allowed, both of two are among them', () => {
    const causes = [
      'lift-pump-weak',
      'suction-air-leak',
      'main-filter-plugged',
      'fuel-overheated',
      'injector-leakage-high',
    ];
    const wrong = causesIn(found({ hardest: true, faults: 'double', causes }, seed).case, catalogue);
    for (const { id } of wrong) expect(causes).toContain(id);
  });
});

test('the certificate that comes with a case is that of the case, and it is settled', () => {
  const result = findCase({ topics: ['filtration'] }, 'alder', catalogue);
  if ('unmet' in result) throw new Error(result.unmet);
  const { difficulty, features, settled } = certify(caseFromSeed(result.case.spec, catalogue), catalogue);
  expect({ settled, difficulty, features }).toEqual({
    settled: true,
    difficulty: result.certificate.difficulty,
    features: result.certificate.features,
  });
});

test('a case whose checks do not settle it is never given', () => {
  let tried = 0;
  const third: Certify = (theCase) => quickCertificate(theCase, { settled: ++tried === 3 });
  expect(found({}, 'alder', third).certificate.settled).toBe(true);
  expect(tried).toBe(3);
  expect(find({}, 'alder', (theCase) => quickCertificate(theCase, { settled: false }))).toMatchObject({
    unmet: 'settled',
    never: false,
    certified: 24,
  });
});

// Of 80 seeds those whose first draws the checks settle least: the fifth or sixth is the first settled.
test.each([
  ['petrel-15', 'lab-24'],
  ['plover-7', 'lab-24'],
  ['tern-13', 'lab-14'],
])(
  'a case at the hardest level is found on %s also where the first draws are not settled',
  (rig, seed) => {
    const really: Certify = (theCase) => certify(theCase, catalogue);
    expect(found({ rigs: [rig], hardest: true }, seed, really).certificate.settled).toBe(true);
  },
  60_000,
);

test('where three in five are settled, as measured at the hardest level, less than one search in 10,000 fails', () => {
  const unsettled: Certify = (theCase) => quickCertificate(theCase, { settled: false });
  const { certified } = find({ rigs: ['plover-7'], hardest: true }, 'alder', unsettled) as UnmetWish;
  expect(0.4 ** certified).toBeLessThan(1e-4);
});

describe('a wish that can never be met is refused by name, before anything is drawn', () => {
  test.each<[string, Wishes, UnmetWish['unmet'], readonly string[]]>([
    ['a rig that there is not', { rigs: ['heron-9'] }, 'rigs', ['heron-9']],
    ['no rig at all', { rigs: [] }, 'rigs', []],
    ['a cause that there is not', { causes: ['gremlins'] }, 'causes', ['gremlins']],
    ['a topic that there is not', { topics: ['welding'] }, 'topics', ['welding']],
    [
      'a cause that no wished rig can have',
      { rigs: ['plover-7'], causes: ['relief-valve-weak-spring'] },
      'causes',
      ['relief-valve-weak-spring'],
    ],
    [
      'a topic that no wished cause covers',
      { causes: ['lift-pump-weak'], topics: ['filtration'] },
      'topics',
      ['filtration'],
    ],
    ['two causes, but not at the hardest level', { faults: 'double' }, 'faults', ['double']],
    [
      'two causes of one area',
      { hardest: true, faults: 'double', causes: ['main-filter-plugged', 'inlet-screen-plugged'] },
      'faults',
      ['double'],
    ],
    ['a band from above to below', { difficulty: [1, -1] }, 'difficulty', ['1', '-1']],
    ['a band that is no number', { difficulty: [Number.NaN, 1] }, 'difficulty', ['NaN', '1']],
    ['no time at all', { minutes: 0 }, 'minutes', ['0']],
  ])('%s', (_what, wishes, unmet, names) => {
    const never: Certify = () => {
      throw new Error('certified');
    };
    expect(find(wishes, 'alder', never)).toEqual({ unmet, never: true, names, drawn: 0, certified: 0 });
  });
});

test('the rig that the refused cause was wished for on really lacks its part', () => {
  expect(aRig('plover-7').elements.map(({ id }) => id)).not.toContain(
    catalogue.causes.get('relief-valve-weak-spring')?.element,
  );
});

describe('otherwise the wish is named that turned away the last candidates', () => {
  test.each<[Wishes, UnmetWish['unmet']]>([
    [{ difficulty: [3, 9] }, 'difficulty'],
    [{ minutes: 5 }, 'minutes'],
    [{ topics: ['filtration'], minutes: 5, difficulty: [-2, 2] }, 'minutes'],
    [{ topics: ['filtration'], minutes: 60, difficulty: [3, 9] }, 'difficulty'],
  ])('%o: %s', (wishes, unmet) => {
    const result = find(wishes);
    expect(result).toMatchObject({ unmet, never: false, names: [] });
    expect((result as UnmetWish).certified).toBeLessThanOrEqual(24);
  });
});

test('a topic that every case practises turns none away', () => {
  const topics = ['reasoning-and-repair-proof'];
  expect(found({ topics }).case.code).toBe(found({}).case.code);
});
