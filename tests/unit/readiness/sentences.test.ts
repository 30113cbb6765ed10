import { expect, test } from 'vitest';
import type { Change } from '@/lib/readiness/changes-soon';
import { sentencesOf } from '@/lib/readiness/sentences';
import { standingOf } from '@/lib/readiness/standing';
import { trainingSet, trainNext } from '@/lib/readiness/train-next';
import { setBodySchema } from '@/lib/sets/set-body';
import { answered, aProfile, NOW, shown } from '../../support/shown';

const DAY = 86_400_000;
const [strong, weak] = [answered(12, 0), answered(0, 12)];
const nothing = { changes: [], signOffEndsAt: null, horizonDays: 90 };
const fade: Change = { topic: 'filtration', from: 'ready', because: 'fades', at: NOW + 20 * DAY };

function sentences(...[shownThings, soon = nothing]: [ReturnType<typeof shown>, (typeof nothing | object)?]) {
  return sentencesOf(standingOf(shownThings), aProfile, { ...nothing, ...soon });
}

test('of somebody ready the least sure topic is named, and nothing is missing', () => {
  const { trust, lack, soon } = sentences(shown({ filtration: answered(9, 1), 'fuel-quality': strong }));
  expect(trust).toMatchObject({ code: 'ready', topic: 'filtration' });
  expect(lack).toEqual({ topics: [], unsafe: 0, cases: 0 });
  expect(soon).toEqual({ code: 'nothing', days: 90 });
});

test('what is missing is told by what it is short of', () => {
  const { trust, lack } = sentences(shown({ filtration: weak }, { safety: [] }));
  expect(trust).toEqual({ code: 'not-yet', weak: 1, of: 2, unsafe: false });
  expect(lack).toEqual({
    topics: [
      { missing: 'weak', topics: ['filtration'] },
      { missing: 'untested', topics: ['fuel-quality'] },
    ],
    unsafe: 0,
    cases: 2,
  });
});

test('not enough evidence says how much was shown', () => {
  const { trust, lack } = sentences(shown({ filtration: strong, 'fuel-quality': answered(2, 0) }));
  expect(trust).toEqual({ code: 'not-enough-evidence', shown: 1, of: 2 });
  expect(lack.topics).toEqual([{ missing: 'too-few', topics: ['fuel-quality'] }]);
});

test('an unsafe act is told even where every topic is shown', () => {
  const { trust, lack } = sentences(shown({ filtration: strong, 'fuel-quality': strong }, { safety: [{ events: 1 }] }));
  expect(trust).toEqual({ code: 'not-yet', weak: 0, of: 2, unsafe: true });
  expect(lack.unsafe).toBe(1);
});

test('what comes first is told: what fades, or the end of the sign-off', () => {
  const all = shown({ filtration: strong, 'fuel-quality': strong });
  expect(sentences(all, { changes: [fade, fade] }).soon).toEqual({ code: 'topic', change: fade, others: 1 });
  const signOffEndsAt = NOW + 10 * DAY;
  expect(sentences(all, { changes: [fade], signOffEndsAt }).soon).toEqual({ code: 'sign-off', at: signOffEndsAt });
  expect(sentences(all, { signOffEndsAt: NOW + 91 * DAY }).soon.code).toBe('nothing');
});

test('training takes up what is weak first, then what was not shown, then what fades', () => {
  const standing = standingOf(shown({ 'fuel-quality': weak }));
  expect(trainNext(standing, aProfile, []).map(({ topic, because }) => [topic, because])).toEqual([
    ['fuel-quality', 'weak'],
    ['filtration', 'untested'],
  ]);
  const ready = standingOf(shown({ filtration: strong, 'fuel-quality': strong }));
  expect(trainNext(ready, aProfile, [fade])).toEqual([{ topic: 'filtration', because: 'fades', cut: 0 }]);
});

test('a set of training is one that can be kept, without what cannot be drawn', () => {
  const trainings = trainNext(standingOf(shown({})), aProfile, []);
  const set = trainingSet(trainings, { title: 'Training', note: '' }, ({ kind }) => kind === 'cases');
  expect(setBodySchema.safeParse(set).success).toBe(true);
  expect(set.items.map(({ kind }) => kind)).toEqual(['cases', 'cases']);
  expect(set.items[0]).toMatchObject({ wishes: { topics: ['filtration'], difficulty: [-1, 1] } });
});
