import { isIP } from 'node:net';
import { z } from 'zod';

const LOG_LEVELS = ['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent'] as const;

/** The least that keeps a secret from being guessed. */
export const SECRET_LENGTH = 32;

const envSchema = z
  .object({
    /** Folder that holds the database and, unless it is given below, the secret. */
    FAULTWRIGHT_DATA: z.string().default('./data'),
    /** Address that the server listens on. */
    FAULTWRIGHT_HOST: z
      .string()
      .refine((host) => isIP(host) > 0 || /^[a-z0-9]([a-z0-9.-]*[a-z0-9])?$/i.test(host), {
        error: 'must be an IP address or a host name',
      })
      .default('127.0.0.1'),
    FAULTWRIGHT_PORT: z
      .string()
      .refine((port) => /^\d{1,5}$/.test(port) && Number(port) >= 1 && Number(port) <= 65_535, {
        error: 'must be a whole number from 1 to 65535',
      })
      .transform(Number)
      .default(3000),
    /** Where people reach the site; null until it follows from the port. */
    FAULTWRIGHT_ORIGIN: z
      .string()
      .refine(isOrigin, { error: 'must be http:// or https:// with a host and nothing behind it' })
      .transform((origin) => new URL(origin).origin)
      .nullable()
      .default(null),
    /** Null where the installation makes its own (secret.ts). */
    FAULTWRIGHT_SECRET: z
      .string()
      .min(SECRET_LENGTH, { error: `must be ${SECRET_LENGTH} characters or more` })
      .nullable()
      .default(null),
    /** Mail server; null where no mail is sent. */
    FAULTWRIGHT_SMTP: z
      .string()
      .refine(isSmtp, { error: 'must be a URL that begins with smtp:// or smtps://' })
      .nullable()
      .default(null),
    /** Null where no mail is sent. */
    FAULTWRIGHT_MAIL_FROM: z
      .string()
      .regex(/^([^\r\n<>]*<[^\s@<>]+@[^\s@<>]+>|[^\s@<>]+@[^\s@<>]+)$/, {
        error: 'must be an e-mail address, or a name with one in <…>',
      })
      .nullable()
      .default(null),
    FAULTWRIGHT_LOG: z.enum(LOG_LEVELS, { error: `must be one of ${LOG_LEVELS.join(', ')}` }).default('info'),
    /** A proxy stands in front, and what it says of who asks is to be believed. */
    FAULTWRIGHT_PROXY: z
      .enum(['yes', 'no'], { error: 'must be yes or no' })
      .default('no')
      .transform((answer) => answer === 'yes'),
  })
  .refine((given) => given.FAULTWRIGHT_SMTP === null || given.FAULTWRIGHT_MAIL_FROM !== null, {
    path: ['FAULTWRIGHT_MAIL_FROM'],
    error: 'must be set where FAULTWRIGHT_SMTP is',
  })
  .transform((given) => ({
    ...given,
    FAULTWRIGHT_ORIGIN: given.FAULTWRIGHT_ORIGIN ?? `http://localhost:${given.FAULTWRIGHT_PORT}`,
  }));

export type Env = z.infer<typeof envSchema>;

/** Settings that cannot be used. The message has a line for each, and never what stood there. */
export class SettingsError extends Error {
  override name = 'SettingsError';
}

/**
 * Reads the settings; one that is empty counts as not given.
 *
 * @throws SettingsError naming every field that cannot be used.
 */
export function parseEnv(given: Readonly<Record<string, string | undefined>>): Env {
  const set = Object.fromEntries(
    Object.entries(given).filter(([name, value]) => name.startsWith('FAULTWRIGHT_') && value),
  );
  const parsed = envSchema.safeParse(set);
  if (parsed.success) return parsed.data;
  throw new SettingsError(parsed.error.issues.map(({ path, message }) => `${path.join('.')} ${message}`).join('\n'));
}

/** Whatever stands behind the host would be left out of every link without a word. */
function isOrigin(text: string): boolean {
  if (!URL.canParse(text)) return false;
  const { protocol, origin, href } = new URL(text);
  return /^https?:$/.test(protocol) && href === `${origin}/`;
}

function isSmtp(text: string): boolean {
  if (!URL.canParse(text)) return false;
  const { protocol, hostname } = new URL(text);
  return /^smtps?:$/.test(protocol) && hostname !== '';
}

/** The settings this installation runs with. Parsed once; a wrong one stops the start and names itself. */
export const env = parseEnv(process.env);
