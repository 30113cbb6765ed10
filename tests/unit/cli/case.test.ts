import { expect, test } from 'vitest';
import { difficultyOf } from '@/lib/diagnosis/difficulty';
import { catalogue } from '../../support/bench-rig';
import { runCommandLine } from '../../support/command-line';

const runCase = (...args: string[]) => runCommandLine('case', ...args);

const chosen = ['--seed', 'alder-17', '--rig', 'tern-13', '--cause', 'inlet-screen-plugged'];

test('a chosen case is printed with its truth', () => {
  const { status, stdout, stderr } = runCase(...chosen, '--severity', '0.8', '--json');
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  expect(JSON.parse(stdout)).toMatchObject({
    seed: 'alder-17',
    rig: 'tern-13',
    causes: [{ id: 'inlet-screen-plugged', element: 'inlet-screen', severity: 0.8 }],
    contentHash: catalogue.contentHash,
  });
});

test('the expert’s route, the certificate and the difficulty with its features are printed too', () => {
  const { difficulty, features, expertRoute, certificate } = JSON.parse(
    runCase(...chosen, '--severity', '0.8', '--json').stdout,
  );
  expect(certificate.settled).toBe(certificate.right >= 0.95);
  expect(expertRoute.length).toBe(features.checks);
  expect(difficulty).toBe(difficultyOf(features));
  let minutes = 0;
  for (const { check, condition, instrument, ...rest } of expertRoute) {
    const procedure = catalogue.checks.get(check);
    expect(procedure?.conditions).toContain(condition);
    expect(procedure?.instruments).toContain(instrument);
    expect(rest).toEqual({ minutes: procedure?.minutes });
    minutes += rest.minutes;
  }
  expect(certificate.minutes).toBe(minutes);
});

test('a person gets lines instead', () => {
  const { stdout } = runCase(...chosen, '--severity', '0.8');
  expect(stdout).toMatch(/^Case \S+ on tern-13, seed alder-17\nTruth: Inlet screen plugged, severity 0\.8\n/);
});

test.each(['rigs', 'causes', 'checks'] as const)('--list %s names each id of content', (kind) => {
  const { status, stdout } = runCase('--list', kind, '--json');
  expect(status).toBe(0);
  expect(JSON.parse(stdout).map(({ id }: { id: string }) => id)).toEqual([...catalogue[kind].keys()]);
});

test.each<[string, string[], RegExp]>([
  [
    'a misspelt cause',
    ['--seed', 'a', '--cause', 'inlet-scren-pluged', '--severity', '1'],
    /inlet-scren-pluged.*inlet-screen-plugged/,
  ],
  ['a misspelt rig', ['--seed', 'a', '--rig', 'tern13'], /tern13.*tern-13/],
  ['an unknown list', ['--list', 'causse'], /causse.*causes/],
  ['a severity above one', [...chosen, '--severity', '1.2'], /--severity: expected 0…1.*1\.2/],
  ['a severity in words', [...chosen, '--severity', 'awful'], /--severity: expected 0…1.*awful/],
  ['a negative severity', [...chosen, '--severity=-0.5'], /--severity: expected 0…1.*-0\.5/],
  ['a severity finer than codes carry', [...chosen, '--severity', '0.12345'], /three decimals/],
  ['a cause without its severity', chosen, /--cause needs --severity/],
  ['a severity without its cause', ['--seed', 'a', '--severity', '0.5'], /--severity needs --cause/],
  ['an unknown option', ['--sed', 'a'], /--sed/],
  ['nothing at all', [], /--seed/],
])('%s is refused with exit code 2 and one line', (_what, args, message) => {
  const { status, stdout, stderr } = runCase(...args);
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr).toMatch(message);
  expect(stderr.trimEnd().split('\n')).toHaveLength(1);
});
