import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Log } from '../log';
import { shownPath } from './shown-path';

/** What is asked for all the time and says little. */
const ROUTINE = /^\/(_next\/|icon\.svg$|favicon\.ico$|api\/health$)/;

/** One line once the answer is through, or has broken off. */
export function logWhenDone(log: Log, req: IncomingMessage, res: ServerResponse, id: string): void {
  const { method, url = '' } = req;
  const started = performance.now();
  const path = shownPath(url);
  res.on('close', () => {
    const status = res.statusCode;
    const line = { id, method, path, status, ms: Math.round(performance.now() - started) };
    log[levelOf(path, status)](res.writableFinished ? line : { ...line, brokeOff: true });
  });
}

function levelOf(path: string, status: number): 'debug' | 'info' | 'error' {
  if (status >= 500) return 'error';
  return ROUTINE.test(path) ? 'debug' : 'info';
}
