import { spawnSync } from 'node:child_process';

/** Runs a command of `app/_cli` as a person would, apart from npm. */
export function runCommandLine(command: string, ...args: string[]) {
  const file = `app/_cli/${command}.ts`;
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', file, ...args], {
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}
