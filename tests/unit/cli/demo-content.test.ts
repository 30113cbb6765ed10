import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { loadDemo, parseDemo } from '@/app/_cli/demo/demo-content';
import { demoSignIns } from '@/app/_cli/demo/demo-sign-ins';

const demo = loadDemo();

describe('the demo school', () => {
  test('has a class of fourteen, two instructors, a shop lead and an administrator, no two of whom sign in alike', () => {
    const { apprentices, instructors, shopLead, administrator } = demo;
    expect(apprentices).toHaveLength(14);
    expect(instructors).toHaveLength(2);
    expect(new Set(apprentices.map(({ handle }) => handle)).size).toBe(14);
    expect(new Set([administrator, ...instructors, shopLead].map(({ address }) => address)).size).toBe(4);
    expect(new Set([administrator, ...instructors, shopLead, ...apprentices].map(({ name }) => name)).size).toBe(18);
  });

  test('has able and less able people', () => {
    const abilities = demo.apprentices.map(
      ({ makeUp }) => Object.values(makeUp).reduce((sum, one) => sum + one, 0) / 5,
    );
    expect(Math.min(...abilities)).toBeLessThan(0.3);
    expect(Math.max(...abilities)).toBeGreaterThan(0.9);
  });

  test('has somebody at work, somebody who has not begun, and one whose attempts were thought out', () => {
    const { apprentices } = demo;
    expect(apprentices.filter(({ open }) => open).length).toBeGreaterThanOrEqual(1);
    expect(apprentices.some(({ attempts, open, handPlayed }) => attempts === 0 && !open && !handPlayed)).toBe(true);
    expect(apprentices.filter(({ handPlayed }) => handPlayed)).toHaveLength(1);
  });

  test('is entered by names and secrets that are printed', () => {
    const lines = demoSignIns(demo).split('\n');
    expect(lines[0]).toMatch(/invented/);
    expect(lines.slice(1).map((line) => line.trim().split(/ {2,}/))).toEqual([
      ['administrator', demo.administrator.name, demo.administrator.address, 'password', demo.password],
      ['instructor', demo.instructors[0]?.name, demo.instructors[0]?.address, 'password', demo.password],
      ['shop lead', demo.shopLead.name, demo.shopLead.address, 'password', demo.password],
      ['apprentice', 'Kit Ashgrove', 'kit@gullrock', 'PIN', demo.pin],
    ]);
  });

  test('is entered by what the readme says', () => {
    const cells = readFileSync('README.md', 'utf8').match(/(?<=^\|.*)`[^`]+`(?=.*\|$)/gm) ?? [];
    const { administrator, instructors, shopLead, password, pin } = demo;
    const said = [administrator, ...instructors.slice(0, 1), shopLead].flatMap(({ address }) => [address, password]);
    for (const word of [...said, 'kit@gullrock', pin]) expect(cells).toContain(`\`${word}\``);
  });
});

describe('a demo is refused, and told where', () => {
  const first = demo.apprentices[0] as (typeof demo.apprentices)[number];

  test.each([
    ['with a make-up out of range', { apprentices: [{ ...first, makeUp: { ...first.makeUp, care: 1.1 } }] }, 'care'],
    ['with more attempts than weeks', { apprentices: [{ ...first, attempts: 5, weeks: 4 }] }, 'attempts'],
    [
      'with an address where mail might arrive',
      { shopLead: { name: 'Sten', address: 'sten@gullrock.com' } },
      'address',
    ],
    ['with a PIN that is guessed first', { pin: '111111' }, 'pin'],
    ['with a short password', { password: 'gullrock' }, 'password'],
    ['with two of one user name', { apprentices: [first, { ...first, name: 'Kat' }] }, 'apprentices'],
    ['with two of one address', { instructors: [demo.shopLead] }, 'instructors'],
  ])('%s', (_what, changes, where) => {
    expect(() => parseDemo({ ...demo, ...changes })).toThrow(where);
  });
});
