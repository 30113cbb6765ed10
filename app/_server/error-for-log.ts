export interface LoggedError {
  type: string;
  message: string;
  stack: string;
  /** What the error page shows to whoever met it, to find this line by. */
  digest?: string;
  code?: string;
  cause?: LoggedError;
}

/** An error as it may stand in the log: where and why, without the values that it met. */
export function errorForLog(thrown: unknown): LoggedError {
  if (!(thrown instanceof Error)) return { type: typeof thrown, message: 'Not an error', stack: '' };
  const { digest, code, cause } = thrown as Error & { digest?: unknown; code?: unknown };
  const message = withoutValues(thrown.message);
  return {
    type: thrown.name,
    message,
    stack: (thrown.stack ?? '').replace(thrown.message, () => message),
    ...(typeof digest === 'string' && { digest }),
    ...(typeof code === 'string' && { code }),
    ...(cause instanceof Error && { cause: errorForLog(cause) }),
  };
}

/** The database layer ends its message with what a query was asked with: anybody's name, or the hash of a password. */
function withoutValues(message: string): string {
  return message.split('\nparams: ', 1)[0] ?? '';
}
