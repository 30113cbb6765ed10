import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';

/** Everything that has to hold, in order. What has no report counts as one test, by its exit code. */
const steps = [
  { script: 'typecheck' },
  { script: 'lint' },
  {
    script: 'test:unit -- --reporter=default --reporter=json --outputFile.json=.reports/vitest.json',
    report: '.reports/vitest.json',
    count: countVitest,
  },
  // Builds the site first: that is what the browser drives.
  { script: 'test:e2e -- --reporter=list,json', report: '.reports/playwright.json', count: countPlaywright },
] as const;

interface Count {
  passed: number;
  failed: number;
}

interface VitestReport {
  numPassedTests: number;
  numFailedTests: number;
  testResults: { status: string; assertionResults: unknown[] }[];
}

interface PlaywrightReport {
  stats: { expected: number; unexpected: number; flaky: number; skipped: number };
  errors: unknown[];
}

/** Runs one step with its output as it comes, then counts what its report says. */
function run(step: (typeof steps)[number]): Count {
  console.log(`\n— npm run ${step.script}`);
  const env = { ...process.env, PLAYWRIGHT_JSON_OUTPUT_FILE: '.reports/playwright.json' };
  const { status } = spawnSync(`npm run -s ${step.script}`, { shell: true, stdio: 'inherit', env });
  if (!('report' in step)) return status === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
  if (!existsSync(step.report)) {
    console.log(`No report in ${step.report}: counted as one failure`);
    return { passed: 0, failed: 1 };
  }
  const { passed, failed } = step.count(JSON.parse(readFileSync(step.report, 'utf8')));
  // A runner can fail although every test passed, such as on an error outside of any.
  return { passed, failed: status === 0 ? failed : Math.max(1, failed) };
}

/** A file that could not be loaded has no tests to count and is a failure itself. */
function countVitest({ numPassedTests, numFailedTests, testResults }: VitestReport): Count {
  const unloaded = testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0);
  return { passed: numPassedTests, failed: numFailedTests + unloaded.length };
}

/** What was skipped did not pass, and neither did what needed a second try. */
function countPlaywright({ stats, errors }: PlaywrightReport): Count {
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky + stats.skipped + errors.length };
}

rmSync('.reports', { recursive: true, force: true });
mkdirSync('.reports');
const counts = steps.map(run);
const passed = counts.reduce((sum, count) => sum + count.passed, 0);
const failed = counts.reduce((sum, count) => sum + count.failed, 0);
console.log(`\ntests: ${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
