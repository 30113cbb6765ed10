import { randomBytes } from 'node:crypto';
import { expect, type Page } from '@playwright/test';
import { type Attempt, recordAttempt } from '@/db/queries/attempts';
import { type ChosenCause, formatCaseCode, seedFromWord } from '@/lib/cases/case-code';
import { anAttempt } from '../support/attempt-rows';
import { storedCase } from '../support/case-codes';
import { harbour, people } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';

/** What a learner does, by the names that stand on the screen. */
export interface HookUp {
  /** Its name on the list, or its id. */
  check: RegExp | string;
  instrument?: string;
  condition: string;
}

export interface Verdict {
  verdict: 'Pass' | 'Fail' | 'Can’t tell';
  comparison: string;
  /** Id of the line; the list shows it in the reader's units. */
  limit: string;
  clears?: readonly string[];
  suspects?: readonly string[];
  /** What is read off a curve; a dial is read by its description. */
  value?: string;
}

export async function startByCode(page: Page, code: string): Promise<string> {
  await page.goto('/learn');
  await page.getByLabel('Case code').fill(code);
  await page.getByRole('button', { name: 'Start this case' }).click();
  await page.waitForURL(/\/learn\/cases\/[0-9a-f]{20}$/);
  return page.url().split('/').at(-1) ?? '';
}

/** An attempt put straight into the shared database, for tests of what comes after the start. */
export async function openAttempt(page: Page, code: string, changes: Partial<Attempt> = {}): Promise<string> {
  const id = randomBytes(10).toString('hex');
  const row = {
    id,
    key: id,
    learnerId: people.learner.id,
    organizationId: harbour.id,
    ...storedCase(code),
    ...changes,
  };
  await recordAttempt(openPlace(placeFor(SHARED_PORT)), anAttempt(row));
  await page.goto(`/learn/cases/${id}`);
  return id;
}

export async function hookUp(page: Page, { check, instrument, condition }: HookUp): Promise<void> {
  const list = page.getByRole('region', { name: 'Hook up' });
  const link =
    typeof check === 'string' ? list.locator(`a[href$="check=${check}"]`) : list.getByRole('link', { name: check });
  await link.click();
  await expect(link).toHaveAttribute('aria-current', 'true');
  if (instrument) await page.getByLabel('Instrument').selectOption({ label: instrument });
  await page.getByLabel('Condition').selectOption({ label: condition });
}

/** Takes the reading and waits until the instrument shows it. */
export async function takeReading(page: Page, wanted: HookUp): Promise<void> {
  const minutes = page.getByRole('region', { name: /./ }).filter({ hasText: 'Shop time used' }).locator('b');
  const before = await minutes.textContent();
  await hookUp(page, wanted);
  await page.getByRole('button', { name: 'Take the reading' }).click();
  await expect(minutes).not.toHaveText(before ?? '');
  await expect(page.getByRole('heading', { name: 'What it shows' })).toBeVisible();
}

/** Reads a scale from its description, as somebody would who cannot see the needle. */
export async function readScale(page: Page): Promise<number> {
  const text = (await page.getByRole('img', { name: /small division/ }).getAttribute('aria-label')) ?? '';
  const division = Number(/small division is ([\d.]+)/.exec(text)?.[1]);
  const number = Number(/(?:on|past|above|at) ([\d.]+)\.?$/.exec(text.replace(/\.$/, ''))?.[1]);
  const past = Number(/stands (\d+)/.exec(text)?.[1] ?? 0);
  const half = / half /.test(text) ? 0.5 : 0;
  return Number((number + (past + half) * division).toPrecision(6));
}

export async function fillFinding(page: Page, finding: Verdict): Promise<void> {
  const value = page.getByLabel('What does it read?');
  if (await value.isVisible()) await value.fill(finding.value ?? String(await readScale(page)));
  await page.getByRole('radio', { name: finding.verdict }).check();
  await page.getByLabel('Because it is').selectOption({ label: finding.comparison });
  await page.getByLabel('the limit for').selectOption(finding.limit);
  for (const area of finding.clears ?? []) await areas(page, 'That clears').getByLabel(area).check();
  for (const area of finding.suspects ?? []) await areas(page, 'Still suspect').getByLabel(area).check();
}

export async function writeFinding(page: Page, finding: Verdict): Promise<void> {
  await fillFinding(page, finding);
  const written = findings(page);
  const before = await written.count();
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(written).toHaveCount(before + 1);
}

/** An answer by the names that stand on the screen. */
export interface Call {
  cause: string;
  repair: string;
  proof: string;
  /** What is ticked as put right. */
  restored?: readonly string[];
}

export async function makeCall(page: Page, call: Call): Promise<void> {
  await fillCall(page, call);
  await page.getByRole('button', { name: 'Make the call' }).click();
  await page.waitForURL(/\/debrief$/);
}

export async function fillCall(page: Page, call: Call): Promise<void> {
  await page.getByLabel('What is wrong?').selectOption({ label: call.cause });
  await page.getByLabel('What do you do about it?').selectOption({ label: call.repair });
  await page.getByLabel('Which check will prove it?').selectOption({ label: call.proof });
  const steps = page.getByRole('group', { name: 'What do you put right before you hand it back?' });
  for (const step of call.restored ?? []) await steps.getByLabel(step).check();
}

/** Asks for a hint and waits until it is there. */
export async function askForHint(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Give me a hint' }).click();
  await expect(page.getByRole('link', { name: 'Hook it up' })).toBeVisible();
}

/** The lines of the job card that carry a verdict. */
export function findings(page: Page) {
  return page.getByRole('region', { name: 'Findings' }).locator('ol > li');
}

function areas(page: Page, name: string) {
  return page.getByRole('group', { name });
}

/** What the sensed curve of the chart comes to at its end, from the chart's description. */
export async function readCurveEnd(page: Page): Promise<string> {
  const text = (await page.getByRole('img', { name: /a division is/ }).getAttribute('aria-label')) ?? '';
  return /sensed.*?([\d.,]+) at the end/.exec(text)?.[1] ?? '';
}

/** The code of a case on tern-13 with two chosen causes. */
export function codeOfTwo(chosen: ChosenCause, also: ChosenCause, word = 'browser-test'): string {
  return formatCaseCode({ rig: 'tern-13', seed: seedFromWord(word), chosen, also });
}

/** A complete piece of work on the case of a weak lift pump. */
export const primePressureLow: { hookUp: HookUp; finding: Verdict } = {
  hookUp: {
    check: /Prime pressure/,
    instrument: 'Dial gauge 0–30 psi, class 1.6',
    condition: 'key on, engine not turning',
  },
  finding: {
    verdict: 'Fail',
    comparison: 'below',
    limit: 'prime-pressure-key-on',
    clears: ['metering and control', 'high pressure'],
    suspects: ['supply side', 'priming'],
  },
};

export const weakLiftPump = {
  cause: 'Weak lift pump',
  repair: 'Replace the electric lift pump',
  proof: 'Prime pressure, key on',
  restored: ['Take gauge, hose and adapter off', 'Prime the low-pressure side', 'Run it and look for leaks'],
};
