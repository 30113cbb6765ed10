import { AsyncLocalStorage } from 'node:async_hooks';
import { format, stripVTControlCharacters } from 'node:util';
import type { Log } from '../log';

const requests = new AsyncLocalStorage<string>();

/** Runs what answers a request, so that whatever it prints on the way is logged with the request's id. */
export function asRequest<T>(requestId: string, run: () => T): T {
  return requests.run(requestId, run);
}

/** Sends to the log what the framework prints: it reports errors of pages by no other way. */
export function sendConsoleToLog(log: Log): void {
  console.error = (...printed: unknown[]) => log.error(...lineOf(printed));
  console.warn = (...printed: unknown[]) => log.warn(...lineOf(printed));
  console.log = (...printed: unknown[]) => log.info(...lineOf(printed));
}

function lineOf(printed: readonly unknown[]): [object, string] {
  const err = printed.find((part) => part instanceof Error);
  const words = stripVTControlCharacters(format(...printed.filter((part) => part !== err))).trim();
  const id = requests.getStore();
  return [{ ...(id && { id }), ...(err && { err }) }, words || 'An error escaped'];
}
