import { type ParseArgsConfig, parseArgs } from 'node:util';
import { distance } from 'fastest-levenshtein';

/** Refused input: one line on stderr, exit code 2. */
export class UsageError extends Error {}

/** Prints what a command returns, or why it refused. */
export async function runCommand(main: () => string | Promise<string>): Promise<void> {
  try {
    process.stdout.write(`${await main()}\n`);
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    process.stderr.write(`${error.message.replaceAll('\n', '; ')}\n`);
    process.exitCode = 2;
  }
}

export function readOptions<const T extends NonNullable<ParseArgsConfig['options']>>(options: T) {
  try {
    return parseArgs({ options }).values;
  } catch (error) {
    throw new UsageError((error as Error).message.split('\n')[0]);
  }
}

/** The id as it is known; refused with the nearest ones otherwise. */
export function known<T extends string>(id: string, ids: readonly T[], kind: string): T {
  const found = ids.find((candidate) => candidate === id);
  if (found !== undefined) return found;
  const near = [...ids].sort((a, b) => distance(id, a) - distance(id, b)).slice(0, 3);
  throw new UsageError(`Unknown ${kind} ${id}. Near: ${near.join(', ')}`);
}
