/** Errors that are the installation's and say all there is to say; any other one is ours and shows where. */
const EXPLAINED = ['SettingsError', 'NewerDatabaseError'];

/** Ends a command that could not do its work: exit code 1, and the reason on stderr. */
export function explainFailure(error: unknown): void {
  const { name, message, stack, syscall } = error as NodeJS.ErrnoException;
  process.stderr.write(`${EXPLAINED.includes(name) || syscall ? message : (stack ?? message)}\n`);
  process.exit(1);
}
