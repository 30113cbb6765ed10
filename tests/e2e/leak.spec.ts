import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { APIRequestContext, Page } from '@playwright/test';
import { codeOf } from '../support/case-codes';
import { causeNames } from '../support/causes';
import { root } from '../support/server';
import { expect, test } from './fixtures';
import { expectAlike as expectBothAlike, listen, whole, wholeBothWays } from './heard';
import {
  askForHint,
  codeOfTwo,
  type HookUp,
  openAttempt,
  primePressureLow,
  takeReading,
  writeFinding,
} from './learner';
import { signInNew, somebodyNew } from './somebody-new';

/** A severity whose digits appear nowhere by chance. */
const SEVERITY = 873;

const readings: readonly HookUp[] = [
  primePressureLow.hookUp,
  { check: /Air in the fuel/, condition: 'idle' },
  { check: /^D1 Rail pressure 6/, condition: 'idle' },
  { check: /Injector return flow/, instrument: 'Measuring cylinder 1,000 mL, one minute, ± 5 mL', condition: 'idle' },
];

test('no response of a running attempt tells the hidden cause from another', async ({ page, request }) => {
  const heard = await listen(page);
  const id = await openAttempt(page, codeOf('injector-leakage-high', SEVERITY, 'leak-test'));
  for (const reading of readings) await takeReading(page, reading);
  await page.goto(`/learn/cases/${id}?reading=1`);
  const answers = [...heard, ...(await crawl(request, id, 4))];
  expect(answers.length).toBeGreaterThan(20);
  for (const answer of answers) expectNothingTold(answer);
});

test('no script that the browser loads knows any cause', () => {
  const folder = join(root, '.next/static');
  const scripts = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.js'));
  expect(scripts.length).toBeGreaterThan(3);
  for (const file of scripts) {
    const script = readFileSync(join(folder, file), 'utf8');
    for (const { id, name } of causeNames()) {
      expect(script.includes(id), `${file} holds ${id}`).toBe(false);
      expect(script.includes(name), `${file} holds “${name}”`).toBe(false);
    }
  }
});

test('no source map is served', () => {
  const files = readdirSync(join(root, '.next/static'), { recursive: true, encoding: 'utf8' });
  expect(files.filter((file) => file.endsWith('.map'))).toEqual([]);
});

test('two cases that differ in nothing but the hidden cause are the same, byte for byte', async ({ page, request }) => {
  const cases = await openBoth(page);
  for (const { id } of cases) {
    await page.goto(`/learn/cases/${id}`);
    for (const reading of readings) await takeReading(page, reading);
  }
  await expectAlike(request, cases, 4);
});

test('two cases that differ in nothing but the hidden cause get the same hint before and after a reading, byte for byte', async ({
  page,
  request,
}) => {
  const cases = await openBoth(page, { coached: true });
  for (const { id } of cases) {
    await page.goto(`/learn/cases/${id}`);
    await askForHint(page);
  }
  const [first] = await expectAlike(request, cases, 1);
  expect(first?.some((answer) => answer.includes('Hook it up'))).toBe(true);
  for (const { id } of cases) {
    await page.goto(`/learn/cases/${id}`);
    await takeReading(page, primePressureLow.hookUp);
    await askForHint(page);
  }
  await expectAlike(request, cases, 3);
});

interface OpenCase {
  id: string;
  code: string;
}

/** Two cases that differ in their hidden cause alone. */
async function openBoth(page: Page, changes: Parameters<typeof openAttempt>[2] = {}): Promise<OpenCase[]> {
  const cases: OpenCase[] = [];
  for (const cause of ['suction-air-leak', 'rail-sensor-reads-high']) {
    const code = codeOf(cause, 0, 'same-bytes');
    cases.push({ code, id: await openAttempt(page, code, changes) });
  }
  return cases;
}

/** Every address of both says the same. @returns the answers of the last round. */
async function expectAlike(request: APIRequestContext, cases: readonly OpenCase[], acts: number): Promise<string[][]> {
  const told = await expectBothAlike(async (side) => {
    const { id, code } = cases[side] ?? { id: '', code: '' };
    const answers = await crawl(request, id, acts);
    return answers.map((answer) => answer.replaceAll(id, 'ATTEMPT').replaceAll(code, 'CODE'));
  });
  expect(told[0].length).toBeGreaterThan(8);
  return told;
}

test('a hint names no cause and no more than a check', async ({ page, request }) => {
  const id = await openAttempt(page, codeOf('injector-leakage-high', SEVERITY, 'leak-test'), { coached: true });
  const heard = await listen(page);
  await askForHint(page);
  const answers = [...heard, ...(await crawl(request, id, 1))];
  expect(answers.some((answer) => answer.includes('Hook it up'))).toBe(true);
  for (const answer of answers) expectNothingTold(answer);
});

test('a second cause is told no more than the first', async ({ page, request }) => {
  const heard = await listen(page);
  const first = { cause: 'injector-leakage-high', severity: SEVERITY };
  const id = await openAttempt(page, codeOfTwo(first, { cause: 'main-filter-plugged', severity: 641 }, 'leak-test'));
  await takeReading(page, primePressureLow.hookUp);
  const answers = [...heard, ...(await crawl(request, id, 1))];
  for (const answer of answers) {
    expectNothingTold(answer);
    expect(answer).not.toMatch(/0\.641|\\?"also\\?":/);
  }
});

test('two cases that differ in nothing but two hidden causes are the same, byte for byte', async ({
  page,
  request,
}) => {
  const pairs = [
    ['suction-air-leak', 'rail-sensor-reads-high'],
    ['main-filter-plugged', 'injector-leakage-high'],
  ] as const;
  const cases: OpenCase[] = [];
  for (const [cause, other] of pairs) {
    const code = codeOfTwo({ cause, severity: 0 }, { cause: other, severity: 0 }, 'same-bytes');
    cases.push({ code, id: await openAttempt(page, code) });
    await takeReading(page, primePressureLow.hookUp);
  }
  await expectAlike(request, cases, 1);
});

test('the debrief of an open attempt is not to be had', async ({ page, request }) => {
  const id = await openAttempt(page, codeOf('injector-leakage-high', SEVERITY, 'leak-test'));
  const answer = await request.get(`/learn/cases/${id}/debrief`, { maxRedirects: 0 });
  expect(answer.status()).toBe(307);
  expectNothingTold(await answer.text());
  const payload = await request.get(`/learn/cases/${id}/debrief`, { headers: { RSC: '1' }, maxRedirects: 0 });
  expectNothingTold(await payload.text());
});

test('a finding is answered without a word on whether it is right', async ({ page }) => {
  await openAttempt(page, codeOf('injector-leakage-high', SEVERITY, 'leak-test'));
  const heard = await listen(page);
  for (const verdict of ['Pass', 'Fail'] as const) {
    await takeReading(page, primePressureLow.hookUp);
    await writeFinding(page, { ...primePressureLow.finding, verdict });
  }
  expect(heard.filter((answer) => answer.startsWith('POST'))).toHaveLength(4);
  for (const answer of heard) {
    expectNothingTold(answer);
    expect(answer).not.toMatch(/expectedVerdict|verdictRight|should have been/i);
  }
});

test('no page or download about people tells anything of a case that is still open', async ({ page }) => {
  const learner = await somebodyNew('learner');
  const administrator = await somebodyNew('administrator', learner.organizationId);
  const { id: learnerId, organizationId } = learner;
  await signInNew(page, learner);
  const code = codeOf('injector-leakage-high', SEVERITY, 'leak-test');
  const id = await openAttempt(page, code, { learnerId, organizationId, difficulty: 0.5 });
  await takeReading(page, primePressureLow.hookUp);
  const own = ['/learn', '/me', '/me/export/json', '/me/export/csv', `/learn/cases/${id}`];
  const answers = await Promise.all(own.map((path) => whole(page.request, path, {})));
  await signInNew(page, administrator);
  const ofPerson = ['', '/merge', '/erase', '/export/json', '/export/csv'].map((end) => `/people/${learnerId}${end}`);
  for (const path of ['/people', ...ofPerson, '/classes', '/log', '/log/export', '/settings'])
    for (const headers of [{}, { RSC: '1' }]) answers.push(await whole(page.request, path, headers));
  expect(answers.filter((answer) => answer.includes(code)).length).toBeGreaterThan(3);
  for (const answer of answers) expectNothingTold(answer);
});

/**
 * Each cause id and each cause name stands as often as every other one, as in a list of all choices; and nothing
 * names a severity or a truth.
 */
function expectNothingTold(answer: string): void {
  const causes = causeNames();
  for (const key of ['id', 'name'] as const) {
    const counts = causes.map((cause) => [cause[key], times(answer, cause[key])] as const);
    const first = counts[0]?.[1];
    expect(counts.filter(([, count]) => count !== first)).toEqual([]);
  }
  expect(answer).not.toMatch(/severity|"truth"|particle|belief/i);
  expect(answer).not.toContain(`0.${SEVERITY}`);
}

function times(text: string, word: string): number {
  return text.split(word).length - 1;
}

/** Every address of an attempt, as a document and as the payload that the router fetches, with their headers. */
async function crawl(request: APIRequestContext, id: string, acts: number): Promise<string[]> {
  const base = `/learn/cases/${id}`;
  const checks = ['prime-pressure', 'suction-restriction', 'rail-pressure', 'no-such-check'];
  const numbers = Array.from({ length: acts }, (_, i) => i + 1);
  const paths = [
    base,
    `${base}?port=F1`,
    ...checks.map((check) => `${base}?check=${check}`),
    ...numbers.map((seq) => `${base}?reading=${seq}`),
  ];
  return wholeBothWays(request, paths);
}
