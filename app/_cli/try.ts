import { spawn, spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const next = createRequire(import.meta.url).resolve('next/dist/bin/next');
const options = { cwd: root, stdio: 'inherit' as const, env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1' } };

/** One command from a fresh checkout to a running site: build, tables, demo with its sign-ins, server. */
step('Building', next, 'build');
step('Preparing the database', '--import', 'tsx', 'app/_cli/migrate.ts');
step('Adding the demo', '--import', 'tsx', 'app/_cli/seed.ts');
serve();

function step(what: string, ...args: string[]): void {
  console.log(`\n${what} …`);
  const { status } = spawnSync(process.execPath, args, options);
  if (status === 0) return;
  console.error(`${what} failed; see above.`);
  process.exit(1);
}

function serve(): void {
  const server = spawn(process.execPath, ['--import', 'tsx', 'app/_cli/serve.ts'], options);
  console.log(`\nFaultwright is at http://localhost:${process.env.FAULTWRIGHT_PORT || 3000}`);
  console.log('Ctrl-C stops it.\n');
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => server.kill(signal));
  server.on('exit', (code) => process.exit(code ?? 0));
}
