import { spawnSync } from 'node:child_process';
import { freshData, next, placeFor, root, SHARED_PORT, startServer } from './server';

/**
 * Builds the site and serves it with an empty database until it is told to stop. For Playwright's `webServer`.
 * FAULTWRIGHT_BUILT=1 takes the build that is there, for running tests again and again.
 */
const env = { ...process.env, NODE_ENV: 'production' as const, NEXT_TELEMETRY_DISABLED: '1' };
if (process.env.FAULTWRIGHT_BUILT !== '1') {
  const built = spawnSync(process.execPath, [next, 'build'], { cwd: root, stdio: 'inherit', env });
  if (built.status !== 0) process.exit(built.status ?? 1);
}

const place = placeFor(SHARED_PORT);
await freshData(place);
const server = startServer(place);
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => server.kill(signal));
server.on('exit', (code) => process.exit(code ?? 0));
