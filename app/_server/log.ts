import pino, { type Logger, type LoggerOptions } from 'pino';
import { env } from './env';
import { errorForLog } from './error-for-log';

export type Log = Logger;

/** One JSON object a line. Never hand it a query string, a cookie, a body or a name: ids and codes say enough. */
export const logOptions = {
  base: null,
  timestamp: pino.stdTimeFunctions.isoTime,
  formatters: { level: (level: string) => ({ level }) },
  serializers: { err: errorForLog },
} satisfies LoggerOptions;

export const log: Log = pino({ ...logOptions, level: env.FAULTWRIGHT_LOG });
