import { describe, expect, test } from 'vitest';
import { adviseOn } from '@/app/_cli/advice';
import { findingsFrom } from '@/app/_cli/finding-argument';
import { catalogue } from '../../support/bench-rig';
import { runCommandLine } from '../../support/command-line';
import { aCase } from '../../support/worked-attempt';

const weakPump = aCase({ cause: 'lift-pump-weak', severity: 0.8 });
const deadEngine = aCase({ cause: 'relief-valve-leaking', severity: 1 });
const advise = (...findings: string[]) => adviseOn(weakPump, catalogue, findingsFrom(findings, weakPump, catalogue));

describe('advice', () => {
  test('starts from the work order, everything still to be looked at', () => {
    const { findings, causes, areas, next } = advise();
    expect(findings).toEqual([]);
    // Sums of some hundred rounded shares.
    expect(causes.reduce((sum, { belief }) => sum + belief, 0)).toBeCloseTo(1, 12);
    expect(Object.values(areas).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(next.map(({ check, condition }) => `${check}@${condition}`)).toContain('prime-pressure@key-on');
  });

  test('puts causes by belief, repairs by belief a minute, checks by what they tell a minute', () => {
    const { causes, repairs, next } = advise('rail-pressure@idle');
    const falls = (list: number[]) => list.every((value, at) => at === 0 || value <= (list[at - 1] ?? 0));
    expect(falls(causes.map(({ belief }) => belief))).toBe(true);
    expect(falls(repairs.map(({ belief, minutes }) => belief / minutes))).toBe(true);
    expect(repairs.map(({ order }) => order)).toEqual(repairs.map((_, at) => at + 1));
    expect(falls(next.map(({ perMinute }) => perMinute))).toBe(true);
  });

  test('reads each finding off the case, leaves it out of what is next, and comes to believe the truth', () => {
    const { findings, causes, next } = advise('prime-pressure@key-on', 'lift-pump-supply@key-on');
    expect(findings.map(({ check, readings }) => [check, readings.map(({ kind }) => kind)])).toEqual([
      ['prime-pressure', ['value']],
      ['lift-pump-supply', ['value', 'value']],
    ]);
    expect(next.some(({ check, condition }) => check === 'prime-pressure' && condition === 'key-on')).toBe(false);
    expect(causes[0]?.id).toBe('lift-pump-weak');
  });

  test('does not hang on the order of findings', () => {
    const [one, other] = [
      advise('prime-pressure@key-on@dial-0-30-psi', 'lift-pump-supply@key-on'),
      advise('lift-pump-supply@key-on', 'prime-pressure@key-on@dial-0-30-psi'),
    ];
    for (const { id, belief } of one.causes) {
      // Products of the same likelihoods, rounded in another order.
      expect(other.causes.find((cause) => cause.id === id)?.belief).toBeCloseTo(belief, 12);
    }
  });

  test('reads a named instrument, and keeps its curve to itself', () => {
    const [{ instrument, readings } = { instrument: '', readings: [] }] = advise(
      'prime-pressure@key-on@dial-0-300-psi',
    ).findings;
    expect([instrument, readings[0]?.kind]).toEqual(['dial-0-300-psi', 'value']);
    const traced = advise('prime-hold@key-on').findings[0]?.readings ?? [];
    expect(traced.map(({ kind }) => kind)).toEqual(['value', 'value']);
    expect(traced.some((shown) => 'lines' in shown)).toBe(false);
  });

  test('refuses what the engine cannot do', () => {
    expect(() => findingsFrom(['rail-pressure@idle'], deadEngine, catalogue)).toThrow(
      '--finding rail-pressure@idle: the engine of this case does not run so',
    );
  });

  test.each([
    ['a check that is nowhere', ['rail-presure@idle'], /check rail-presure\. Near: rail-pressure/],
    [
      'a check that this rig has no port for',
      ['rear-pump-return-flow@idle'],
      /tern-13 has no port for rear-pump-return/,
    ],
    ['a condition it is not done in', ['rail-pressure@cranking'], /condition of rail-pressure cranking/],
    ['an instrument that does not fit', ['rail-pressure@idle@eyes'], /instrument for rail-pressure eyes/],
    ['a finding without its condition', ['rail-pressure'], /expected CHECK@CONDITION.*got rail-pressure/],
    ['a finding with too much', ['a@b@c@d'], /expected CHECK@CONDITION.*got a@b@c@d/],
    ['a finding with an empty instrument', ['rail-pressure@idle@'], /expected CHECK@CONDITION/],
    ['the same finding twice', ['rail-pressure@idle', 'rail-pressure@idle'], /rail-pressure@idle is given twice/],
  ])('refuses %s', (_what, findings, message) => {
    expect(() => findingsFrom(findings, weakPump, catalogue)).toThrow(message);
  });
});

describe('the command', () => {
  const seeded = ['--seed', 'alder-17', '--finding', 'prime-pressure@key-on'];

  test('prints JSON', () => {
    const { status, stdout, stderr } = runCommandLine('advise', ...seeded, '--json');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(Object.keys(JSON.parse(stdout))).toEqual(['caseCode', 'findings', 'causes', 'areas', 'repairs', 'next']);
  });

  test('prints lines for a person', () => {
    const { stdout } = runCommandLine('advise', ...seeded);
    expect(stdout).toMatch(/^Case \S+\nRead: prime-pressure @ key-on with \S+: prime-pressure \S+ \S+\nCauses\n/);
  });

  test.each([
    ['no seed', [], /--seed WORD/],
    [
      'a misspelt finding',
      ['--seed', 'a', '--finding', 'prime-presure@key-on'],
      /prime-presure\. Near: prime-pressure/,
    ],
    ['a misspelt rig', ['--seed', 'a', '--rig', 'tern'], /tern\. Near: tern-13/],
  ])('refuses %s with exit code 2 and one line', (_what, args, message) => {
    const { status, stdout, stderr } = runCommandLine('advise', ...args);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(message);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  });
});
