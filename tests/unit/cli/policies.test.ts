import { expect, test } from 'vitest';
import { runCommandLine } from '../../support/command-line';

test('one case prints every policy, and as JSON', () => {
  const { status, stdout, stderr } = runCommandLine('policies', '--cases', '1', '--calibration-cases', '1', '--json');
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  const { scores, calibration } = JSON.parse(stdout);
  expect(scores.map(({ policy }: { policy: string }) => policy)).toEqual([
    'expert',
    'sound-but-slow',
    'right-verdicts-wrong-reasons',
    'random-clicker',
    'parts-changer',
  ]);
  expect(calibration).toMatchObject({ cases: 1, every: { bins: { length: 10 } }, leading: { bins: { length: 10 } } });
});

test('a person gets a table', () => {
  const { stdout } = runCommandLine('policies', '--cases', '1', '--calibration-cases', '0');
  expect(stdout).toMatch(/^policy +cases +mean +sd +solved/);
  expect(stdout).toMatch(/\nexpert +1 /);
});

test.each([
  ['a count in words', ['--cases', 'many'], /--cases: expected a whole number.*many/],
  ['a negative count', ['--calibration-cases=-3'], /--calibration-cases: expected a whole number.*-3/],
  ['an unknown option', ['--case', '3'], /--case/],
])('%s is refused with exit code 2 and one line', (_what, args, message) => {
  const { status, stdout, stderr } = runCommandLine('policies', ...args);
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr).toMatch(message);
  expect(stderr.trimEnd().split('\n')).toHaveLength(1);
});
