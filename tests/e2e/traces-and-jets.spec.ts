import { codeOf } from '../support/case-codes';
import { expect, test } from './fixtures';
import { findings, makeCall, openAttempt, readCurveEnd, takeReading, weakLiftPump, writeFinding } from './learner';

const code = codeOf('lift-pump-weak', 800);

test('a trace is read off its chart and judged, each quantity by itself', async ({ page }) => {
  await openAttempt(page, code);
  await takeReading(page, { check: 'crank-trace', condition: 'cranking' });
  const chart = page.getByRole('img', { name: /a division is/ });
  await expect(chart).toBeVisible();
  await expect(page.locator('input[name="unit"]')).toHaveValue('s');
  await expect(page.getByText('To be read off:')).toContainText('Time until injection');

  await page.getByText('The same as a table').click();
  expect(await page.getByRole('table').getByRole('row').count()).toBeGreaterThan(4);

  await page
    .getByRole('link', { name: /Rail pressure reached/ })
    .first()
    .click();
  await expect(page.locator('select[name="unit"]')).toHaveValue('MPa');
  await expect(chart).toBeVisible();
  const value = await readCurveEnd(page);
  await writeFinding(page, {
    value,
    verdict: 'Can’t tell',
    comparison: 'too close to tell from',
    limit: 'pressure-reached-cranking',
    suspects: ['priming'],
  });
  await expect(findings(page)).toContainText(`${value}\u00a0MPa`);
});

test('a chart is ruled in the units that the reader chose', async ({ page }) => {
  await openAttempt(page, code);
  await page.getByLabel('Units').selectOption('psi-f');
  await takeReading(page, { check: 'prime-hold', condition: 'key on, engine not turning' });
  await expect(page.getByRole('img', { name: /Pressure above the air, psi/ })).toBeVisible();
  await page
    .getByRole('link', { name: /Pressure left/ })
    .first()
    .click();
  await expect(page.locator('select[name="unit"]')).toHaveValue('psi');
});

test('what an eye sees stands in words and is held against a worst word', async ({ page }) => {
  await openAttempt(page, code);
  await takeReading(page, { check: 'look-over', condition: 'idle' });
  await writeFinding(page, {
    verdict: 'Pass',
    comparison: 'no worse than allowed',
    limit: 'outside-leak-idle',
    suspects: ['priming'],
  });
  await expect(findings(page)).toContainText('no worse than allowed: no worse than “dry”');
});

test('a fitting loosened on a running engine is a jet, nothing to judge, and caps the grade', async ({ page }) => {
  await openAttempt(page, code);
  await takeReading(page, { check: 'high-pressure-fitting', condition: 'idle' });
  const bench = page.getByRole('region', { name: 'What it shows' });
  await expect(bench.getByRole('heading', { name: 'A jet of fuel' })).toBeVisible();
  await expect(bench).toContainText(/MPa behind the fitting, a jet of [2-4]\d\d m\/s/);
  await expect(bench).toContainText('surgical emergency even if it is painless');
  await expect(page.getByRole('button', { name: 'Write it down' })).toHaveCount(0);
  await makeCall(page, weakLiftPump);
  const safety = page.getByRole('region', { name: 'Safety first' });
  await expect(safety).toContainText('A jet like that goes through gloves and skin');
  await expect(safety).toContainText('Easy to get wrong: The nut is loosened on the running engine');
});
