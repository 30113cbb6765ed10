import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { rmSync } from 'node:fs';
import { findUserByAddress } from '@/db/queries/users';
import { openPlace, placeFor, root, untilUp } from '../support/server';
import { expect, test } from './fixtures';

/** An installation without anybody, as it comes. */
const place = placeFor(3140);
const settings = { FAULTWRIGHT_DATA: place.data, FAULTWRIGHT_PORT: String(place.port), FAULTWRIGHT_LOG: 'silent' };
const TOKEN = /with this token[^\n]*\n+\s+([0-9a-f]{32})\n/;

test.use({ baseURL: `http://127.0.0.1:${place.port}`, as: null, forgiven: /404/ });

/** Starts the server and listens to its console. */
function start(): { server: ChildProcess; said: () => string } {
  const env = { ...process.env, ...settings, FAULTWRIGHT_HOST: '127.0.0.1' };
  const server = spawn(process.execPath, ['--import', 'tsx', 'app/_cli/serve.ts'], { cwd: root, env });
  let text = '';
  server.stdout.on('data', (piece) => {
    text += String(piece);
  });
  return { server, said: () => text };
}

test('whoever reads the console sets a new installation up, once', async ({ page }) => {
  rmSync(place.data, { recursive: true, force: true });
  const first = start();
  try {
    await untilUp(place);
    await expect.poll(first.said).toMatch(TOKEN);
    const token = TOKEN.exec(first.said())?.[1] ?? '';

    await page.goto('/set-up');
    await page.getByLabel('Set-up token').fill('0'.repeat(32));
    await page.getByLabel('Name of the shop or college').fill('Skerry Diesel');
    await page.getByLabel('Short name', { exact: true }).fill('Skerry Diesel');
    await page.getByLabel('Your name').fill('Una Skerry');
    await page.getByLabel('E-mail, or a user name').fill('una');
    await page.getByLabel('Password, or a PIN').fill('lighthouse at noon');
    await page.getByRole('button', { name: 'Set it up' }).click();
    await expect(page.getByText('That is not the token')).toBeVisible();
    await page.getByLabel('Set-up token').fill(token);
    await page.getByRole('button', { name: 'Set it up' }).click();
    await expect(page.getByText('A short name has 2 to 32')).toBeVisible();
    await page.getByLabel('Short name', { exact: true }).fill('skerry');
    await page.getByRole('button', { name: 'Set it up' }).click();
    await page.waitForURL(/\/people$/);
    await expect(page.getByRole('link', { name: 'Upkeep' })).toBeVisible();
    expect(await findUserByAddress(openPlace(place), 'una@skerry.invalid')).toMatchObject({ keeper: true });

    await page.goto('/set-up');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('There is nothing here for you');
    // What the page still asks for would be refused, and count as a complaint.
    await page.goto('about:blank');
  } finally {
    first.server.kill('SIGTERM');
    await once(first.server, 'exit');
  }
  const second = start();
  try {
    await untilUp(place);
    await page.goto('/people');
    await expect(page.getByText('una@skerry')).toBeVisible();
    expect(second.said()).not.toMatch(TOKEN);
    await page.goto('about:blank');
  } finally {
    second.server.kill('SIGTERM');
  }
});
