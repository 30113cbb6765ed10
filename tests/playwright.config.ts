import { existsSync } from 'node:fs';
import { defineConfig } from '@playwright/test';

const PORT = 3131;
/** Debian's browser where there is one; else the one that Playwright brings. */
const CHROMIUM = '/usr/bin/chromium';

export default defineConfig({
  testDir: './e2e',
  outputDir: '../test-results',
  workers: 2,
  // Room for a machine that does other work too; a test that hangs still ends.
  timeout: 240_000,
  expect: { timeout: 15_000 },
  reporter: [['list']],
  use: {
    baseURL: `http://127.0.0.1:${PORT}`,
    viewport: { width: 1280, height: 800 },
    launchOptions: {
      ...(existsSync(CHROMIUM) && { executablePath: CHROMIUM }),
      // Without a graphics card, drawing on a pretended one takes most of the processor.
      args: ['--no-sandbox', '--disable-background-networking', '--disable-gpu'],
    },
  },
  webServer: {
    command: 'node --import tsx tests/support/serve.ts',
    cwd: '..',
    url: `http://127.0.0.1:${PORT}/icon.svg`,
    timeout: 180_000,
    gracefulShutdown: { signal: 'SIGTERM', timeout: 5000 },
  },
});
