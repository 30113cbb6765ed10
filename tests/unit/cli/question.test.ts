import { expect, test } from 'vitest';
import { describeQuestion } from '@/app/_cli/print-question';
import { questionKindIds } from '@/lib/questions/question';
import { kindOf, questionFromSeed } from '@/lib/questions/question-from-seed';
import { catalogue } from '../../support/bench-rig';
import { runCommandLine } from '../../support/command-line';

const runQuestion = (...args: string[]) => runCommandLine('question', ...args);

test('every kind is listed, with the topics and rigs that it can be asked on', () => {
  const { status, stdout } = runQuestion('--list', 'kinds', '--json');
  expect(status).toBe(0);
  const kinds: { id: string; topics: string[]; rigs: string[] }[] = JSON.parse(stdout);
  expect(kinds.map(({ id }) => id)).toEqual([...questionKindIds]);
  for (const { topics, rigs } of kinds) expect(Math.min(topics.length, rigs.length)).toBeGreaterThan(0);
});

test.each(questionKindIds)('a question of the kind %s is printed whole, the same in another process', (kind) => {
  const { status, stdout, stderr } = runQuestion('--kind', kind, '--seed', 'alder-17', '--json');
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  expect(JSON.parse(stdout)).toMatchObject({ kind, seed: 'alder-17' });
  const fields = ['stem', 'figure', 'answer', 'key', 'explanation', 'topics', 'difficulty', 'features', 'guessFloor'];
  expect(Object.keys(JSON.parse(stdout))).toEqual(expect.arrayContaining(fields));
  // After others have been drawn here, which must not move it.
  for (const seed of ['birch-1', 'birch-2', 'birch-3']) questionFromSeed({ kind, seed }, catalogue);
  const here = questionFromSeed({ kind, seed: 'alder-17' }, catalogue);
  const described = describeQuestion(here, kindOf(kind, catalogue).content, catalogue);
  expect(JSON.parse(stdout)).toEqual(JSON.parse(JSON.stringify(described)));
});

test('a question on a rig and a topic is about that rig and on that topic', () => {
  const { stdout } = runQuestion(
    ...['--kind', 'judge', '--seed', '1', '--rig', 'plover-7', '--topic', 'filtration', '--json'],
  );
  const { rig, topics } = JSON.parse(stdout);
  expect(rig).toBe('plover-7');
  expect(topics).toContain('filtration');
});

test('a person gets lines instead', () => {
  const { stdout } = runQuestion('--kind', 'judge', '--seed', '1');
  expect(stdout).toMatch(/\nkey {10}\{.*\n[\s\S]*\ntopics {7}/);
});

test.each<[string, string[], RegExp]>([
  ['a misspelt kind', ['--kind', 'jugde', '--seed', '1'], /jugde.*judge/],
  ['a misspelt rig', ['--kind', 'judge', '--seed', '1', '--rig', 'tern13'], /tern13.*tern-13/],
  ['a topic that the kind has nothing on', ['--kind', 'read-dial', '--seed', '1', '--topic', 'x'], /Unknown topic x/],
  ['no seed', ['--kind', 'judge'], /--seed/],
  ['an unknown list', ['--list', 'topics'], /topics.*kinds/],
])('%s is refused in one line', (_, args, said) => {
  const { status, stdout, stderr } = runQuestion(...args);
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr).toMatch(said);
  expect(stderr.trim().split('\n')).toHaveLength(1);
});
