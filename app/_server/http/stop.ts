import type { Server } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';
import { log } from '../log';

/** What is being answered gets this long to end. */
const GRACE_MS = 8000;

/** Takes no more requests once told to stop, ends those that are underway, then leaves. */
export function stopOnSignal(server: Server, app: { close(): Promise<void> }, dev: boolean): void {
  let stopping = false;
  const stop = async (signal: string) => {
    if (stopping) return;
    stopping = true;
    log.info({ signal }, 'Stopping');
    const ended = new Promise((resolve) => server.close(resolve));
    // A browser keeps its connection for its next request; one that has just been answered must not hold up the end.
    setInterval(() => server.closeIdleConnections(), 100).unref();
    // A reloading page keeps its line open for as long as it is shown.
    await Promise.race([ended, wait(dev ? 0 : GRACE_MS)]);
    server.closeAllConnections();
    await app.close();
    process.exit(0);
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, stop);
}
