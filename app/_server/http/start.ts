import { once } from 'node:events';
import { createServer, type Server } from 'node:http';
import next from 'next';
import { migrateDatabase } from '@/db/client';
import { catalogue } from '../catalogue';
import { database } from '../database';
import { env } from '../env';
import { log } from '../log';
import { secret } from '../secret';
import { announce } from './announce';
import { sendConsoleToLog } from './console-log';
import { siteListener } from './site-listener';
import { stopOnSignal } from './stop';

/**
 * The site's own server around the framework's pages. Whatever could go wrong with this installation goes wrong
 * before it listens.
 *
 * @param dev  Serves from source instead of from the build.
 */
export async function start({ dev }: { dev: boolean }): Promise<void> {
  secret();
  migrateDatabase(database(), 'db/migrations');
  catalogue();
  if (!dev) sendConsoleToLog(log);
  const server = createServer();
  const app = next({
    dev,
    hostname: env.FAULTWRIGHT_HOST,
    port: env.FAULTWRIGHT_PORT,
    httpServer: upgrading(server, dev),
  });
  // Where the framework asks itself for a page. It would otherwise go by the visitor's scheme, which ends at the proxy.
  process.env.__NEXT_PRIVATE_ORIGIN = ownAddress();
  await app.prepare();
  const site = { origin: env.FAULTWRIGHT_ORIGIN, proxy: env.FAULTWRIGHT_PROXY, dev };
  server.on('request', siteListener(site, app.getRequestHandler(), log));
  server.listen(env.FAULTWRIGHT_PORT, env.FAULTWRIGHT_HOST);
  await once(server, 'listening');
  stopOnSignal(server, app, dev);
  log.info({ host: env.FAULTWRIGHT_HOST, port: env.FAULTWRIGHT_PORT, origin: env.FAULTWRIGHT_ORIGIN }, 'Listening');
  await announce(env.FAULTWRIGHT_ORIGIN);
}

/** Only reloading while one develops needs another protocol; otherwise the framework is given a server that hears nothing. */
function upgrading(server: Server, dev: boolean): Server {
  return dev ? server : createServer();
}

function ownAddress(): string {
  const host = { '0.0.0.0': '127.0.0.1', '::': '::1' }[env.FAULTWRIGHT_HOST] ?? env.FAULTWRIGHT_HOST;
  return `http://${host.includes(':') ? `[${host}]` : host}:${env.FAULTWRIGHT_PORT}`;
}
