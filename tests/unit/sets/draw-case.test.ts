import { describe, expect, test } from 'vitest';
import { formatCaseCode } from '@/lib/cases/case-code';
import { ALIKE_WITHIN, type CaseItem, drawCase, type Likeness, likenessOf } from '@/lib/sets/draw-case';
import { topicsOf } from '@/lib/topics/topics-of';
import type { Certify, FoundCase, UnmetWish } from '@/lib/wishes/find-case';
import { catalogue } from '../../support/bench-rig';
import { quickCertificate } from '../../support/quick-certificate';

const quickly: Certify = (theCase) => quickCertificate(theCase);
const seeds = ['alder', 'beech', 'cedar', 'damson', 'elder', 'fir'];

function slots(wishes: Extract<CaseItem, { kind: 'cases' }>['wishes']): CaseItem {
  return { id: 'a', kind: 'cases', count: 2, wishes };
}

function byCode(code: string): CaseItem {
  return { id: 'a', kind: 'case', code };
}

function draw(item: CaseItem, seed: string, like?: Likeness, by = quickly): FoundCase | UnmetWish {
  return drawCase(item, seed, catalogue, like, by);
}

function found(item: CaseItem, seed: string, like?: Likeness): FoundCase {
  const result = draw(item, seed, like);
  if ('unmet' in result) throw new Error(`No case: ${result.unmet}`);
  return result;
}

describe('a case by its code', () => {
  const code = formatCaseCode({ rig: 'tern-13', seed: '0A1B2C' });

  test('is the same for every seed, and for a parallel too', () => {
    const drawn = [found(byCode(code), 'alder'), found(byCode(code), 'beech', { difficulty: 2 })];
    expect(drawn.map((one) => one.case.code)).toEqual([code, code]);
  });

  test('that cannot be read, or that no check settles, says so', () => {
    expect(draw(byCode('ABC'), 'alder')).toMatchObject({ unmet: 'causes', never: true, names: ['ABC'] });
    const unsettled: Certify = (theCase) => quickCertificate(theCase, { settled: false });
    expect(draw(byCode(code), 'alder', undefined, unsettled)).toMatchObject({ unmet: 'settled', names: [code] });
  });
});

describe('a drawn case', () => {
  const item = slots({ topics: ['filtration', 'priming-and-lift-pump'], difficulty: [-0.5, 0.5], rigs: ['tern-13'] });

  test('meets what the item wishes, another for each seed', () => {
    const drawn = seeds.map((seed) => found(item, seed));
    for (const { case: theCase, certificate } of drawn) {
      expect(theCase.rig.id).toBe('tern-13');
      expect(Math.abs(certificate.difficulty)).toBeLessThanOrEqual(0.5);
    }
    expect(new Set(drawn.map((one) => one.case.code)).size).toBe(seeds.length);
  });

  test('that is to be like another is as hard, on its topic, and still as wished', () => {
    const first = found(item, 'alder');
    const like = likenessOf(first, catalogue);
    expect(like.topics).toEqual(topicsOf(first.case, catalogue).map(({ id }) => id));
    for (const seed of seeds.slice(1)) {
      const other = found(item, seed, like);
      expect(Math.abs(other.certificate.difficulty - first.certificate.difficulty)).toBeLessThanOrEqual(ALIKE_WITHIN);
      expect(Math.abs(other.certificate.difficulty)).toBeLessThanOrEqual(0.5);
      expect(topicsOf(other.case, catalogue).map(({ id }) => id)).toEqual(like.topics);
      expect(other.case.code).not.toBe(first.case.code);
    }
  });

  test('says which wish there is no case for', () => {
    expect(draw(slots({ rigs: ['heron-9'] }), 'alder')).toMatchObject({ unmet: 'rigs', never: true });
    const outside = draw(slots({ difficulty: [-0.5, 0.5] }), 'alder', { difficulty: 5 });
    expect(outside).toMatchObject({ unmet: 'difficulty', never: true });
  });
});
