import { describe, expect, test } from 'vitest';
import { formatCaseCode } from '@/lib/cases/case-code';
import { itemFault, setFaults } from '@/lib/sets/item-faults';
import type { CaseWishes, SetItem } from '@/lib/sets/set-body';
import { catalogue } from '../../support/bench-rig';
import { aSetBody } from '../../support/teaching-rows';

const code = formatCaseCode({ rig: 'tern-13', seed: '0A1B2C' });
const cases = (wishes: CaseWishes): SetItem => ({ id: 'a', kind: 'cases', count: 1, wishes });
const byCode = (typed: string): SetItem => ({ id: 'a', kind: 'case', code: typed });
const fault = (item: SetItem) => itemFault(item, catalogue);

describe('an item that can never be drawn says why', () => {
  test.each<[string, SetItem, object]>([
    ['a code that is none', byCode('ABC'), { code: 'malformed' }],
    ['a code with a slip', byCode(code.replace(/.$/, (last) => (last === '0' ? '1' : '0'))), { code: 'check-symbols' }],
    ['two causes below the hardest level', cases({ faults: 'double' }), { code: 'never-met', unmet: 'faults' }],
    ['a band the wrong way round', cases({ difficulty: [1, -1] }), { code: 'never-met', unmet: 'difficulty' }],
    ['a rig that there is not', cases({ rigs: ['heron-9'] }), { code: 'never-met', unmet: 'rigs', names: ['heron-9'] }],
    [
      'a topic that there is not',
      { id: 'a', kind: 'questions', count: 1, topic: 'knitting' },
      { code: 'unknown-topic' },
    ],
    [
      'a kind that is not asked there',
      { id: 'a', kind: 'questions', count: 1, topic: 'fuel-quality', questionKind: 'read-trace' },
      { code: 'kind-not-on-topic' },
    ],
  ])('%s', (_what, item, told) => {
    expect(fault(item)).toMatchObject(told);
  });
});

test('what can be drawn has nothing wrong with it', () => {
  expect(fault(byCode(code.toLowerCase()))).toBeUndefined();
  expect(fault(cases({ hardest: true, faults: 'double', topics: ['filtration'] }))).toBeUndefined();
  expect(fault({ id: 'a', kind: 'questions', count: 1, topic: 'fuel-quality', questionKind: 'judge' })).toBeUndefined();
});

test('of a set, only the items that cannot be drawn are named', () => {
  const body = aSetBody({ items: [cases({}), { ...byCode('ABC'), id: 'b' }] });
  expect([...setFaults(body, catalogue).keys()]).toEqual(['b']);
});
