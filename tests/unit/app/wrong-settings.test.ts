import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';

test.each(['serve', 'migrate'])('%s does not start on wrong settings, and says which in a line each', (command) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', `app/_cli/${command}.ts`], {
    encoding: 'utf8',
    env: { ...process.env, FAULTWRIGHT_PORT: 'front door', FAULTWRIGHT_SECRET: 'hush', FAULTWRIGHT_PROXY: 'true' },
  });
  expect({ status, stdout, stderr }).toEqual({
    status: 1,
    stdout: '',
    stderr:
      'FAULTWRIGHT_PORT must be a whole number from 1 to 65535\n' +
      'FAULTWRIGHT_SECRET must be 32 characters or more\n' +
      'FAULTWRIGHT_PROXY must be yes or no\n',
  });
});
